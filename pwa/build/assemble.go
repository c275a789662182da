package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"path"
	"strconv"
	"strings"

	"rimside/pwa/build/bundle"
	"rimside/pwa/build/icon"
)

// assemble makes every file of the app in memory and returns the files with the app's version. The order matters: each
// step needs the addresses that the steps before it gave out.
func assemble(root string) (tree, string, error) {
	files := tree{}
	addresses, err := addScripts(files, root)
	if err != nil {
		return nil, "", err
	}
	if err := addIcons(files, addresses); err != nil {
		return nil, "", err
	}
	if err := addManifest(files, root, addresses); err != nil {
		return nil, "", err
	}
	addresses["manifest"] = "app.webmanifest"
	precached := append([]string{"./"}, files.paths()...)

	recover, err := bundle.Script(root, "pwa/src/recover.ts", nil)
	if err != nil {
		return nil, "", err
	}
	addresses["recover"] = files.addHashed("recover.js", recover.Script)
	version, err := addPages(files, root, addresses)
	if err != nil {
		return nil, "", err
	}
	if err := addWorkerOfPage(files, root, version, precached); err != nil {
		return nil, "", err
	}
	return files, version, nil
}

// addScripts adds the calculations, their worker, the page's scripts and the style sheet.
func addScripts(files tree, root string) (map[string]string, error) {
	wasm, err := compileWASM(root)
	if err != nil {
		return nil, err
	}
	worker, err := bundle.Script(root, "pwa/src/calc-worker.ts", nil)
	if err != nil {
		return nil, err
	}
	addresses := map[string]string{
		"wasm":   files.addHashed("calc.wasm", wasm),
		"worker": files.addHashed("calc-worker.js", worker.Script),
	}
	defines := map[string]string{
		"__WORKER_URL__": strconv.Quote(addresses["worker"]),
		"__WASM_URL__":   strconv.Quote(addresses["wasm"]),
	}
	style, err := bundle.Style(root, "pwa/src/main.ts", maps.Clone(defines))
	if err != nil {
		return nil, err
	}
	if len(style) == 0 {
		return nil, fmt.Errorf("pwa/src/main.ts imports no style sheet: the app would have none")
	}
	addresses["css"] = files.addHashed("main.css", style)
	modules, err := bundle.Split(root, "pwa/src/main.ts", defines)
	if err != nil {
		return nil, err
	}
	folder := files.addModules(modules.Files)
	addresses["main"] = path.Join(folder, modules.Entry)
	var hints strings.Builder
	for _, name := range modules.First {
		fmt.Fprintf(&hints, "<link rel=\"modulepreload\" href=%q>\n", path.Join(folder, name))
	}
	addresses["modules"] = hints.String()
	return addresses, nil
}

func addIcons(files tree, addresses map[string]string) error {
	for _, wanted := range []struct {
		key, name string
		draw      func(size int) ([]byte, error)
		size      int
	}{
		{"icon180", "icon-180.png", icon.Full, 180},
		{"icon192", "icon-192.png", icon.Rounded, 192},
		{"icon512", "icon-512.png", icon.Rounded, 512},
		{"maskable512", "icon-maskable-512.png", icon.Maskable, 512},
	} {
		picture, err := wanted.draw(wanted.size)
		if err != nil {
			return err
		}
		addresses[wanted.key] = files.addHashed(wanted.name, picture)
	}
	return nil
}

// addManifest fills the manifest and makes sure that it is JSON: browsers ignore a broken one without a word.
func addManifest(files tree, root string, addresses map[string]string) error {
	const name = "app.webmanifest.json"
	template, err := readSource(root, name)
	if err != nil {
		return err
	}
	manifest, err := fill(name, template, addresses)
	if err != nil {
		return err
	}
	var parsed map[string]any
	if err := json.Unmarshal(manifest, &parsed); err != nil {
		return fmt.Errorf("pwa/src/%s is not JSON: %w", name, err)
	}
	compact, err := json.Marshal(parsed) // encoding/json sorts the keys: the same manifest, the same bytes
	if err != nil {
		return err
	}
	files["app.webmanifest"] = compact
	return nil
}

// addPages fills the shell and the recovery page. Their place in the version is taken before the version stands in them.
func addPages(files tree, root string, addresses map[string]string) (string, error) {
	pages := []struct{ source, path, prefix string }{
		{"shell.html", "index.html", ""},
		{"recover.html", "recover/index.html", "../"},
	}
	for _, page := range pages {
		template, err := readSource(root, page.source)
		if err != nil {
			return "", err
		}
		values := map[string]string{"version": "{{version}}"}
		for key, address := range addresses {
			values[key] = page.prefix + address
		}
		if files[page.path], err = fill(page.source, template, values); err != nil {
			return "", err
		}
	}
	version := files.version()
	for _, page := range pages {
		filled, err := fill(page.source, files[page.path], map[string]string{"version": version})
		if err != nil {
			return "", err
		}
		files[page.path] = filled
	}
	return version, nil
}

// addWorkerOfPage bundles the service worker with its list and writes the version where the page can ask for it.
func addWorkerOfPage(files tree, root, version string, precached []string) error {
	list, err := json.Marshal(precached)
	if err != nil {
		return err
	}
	defines := map[string]string{"__VERSION__": strconv.Quote(version), "__FILES__": string(list)}
	script, err := bundle.Script(root, "pwa/src/sw.ts", maps.Clone(defines))
	if err != nil {
		return err
	}
	files["sw.js"] = script.Script
	files["version.json"] = fmt.Appendf(nil, "{\"version\":%q}\n", version)
	return nil
}
