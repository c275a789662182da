package bundle

import (
	"encoding/json"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

const sources = "pwa/src"

// Graph maps every TypeScript file of pwa/src to the files of pwa/src it imports, all as paths under root with forward
// slashes. Imports of values come from the bundler; it drops imports of types, so those are read from the text.
func Graph(root string) (map[string][]string, error) {
	entries, err := scripts(root)
	if err != nil {
		return nil, err
	}
	options, err := options(root, entries)
	if err != nil {
		return nil, err
	}
	options.Format, options.Metafile = api.FormatESModule, true // the app waits for its words at its top level
	built := api.Build(options)
	if err := problems(built.Errors); err != nil {
		return nil, err
	}
	graph, err := valueImports(built.Metafile)
	if err != nil {
		return nil, err
	}
	for _, file := range entries {
		text, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(file)))
		if err != nil {
			return nil, err
		}
		graph[file] = append(graph[file], writtenImports(file, string(text), entries)...)
		slices.Sort(graph[file])
		graph[file] = slices.Compact(graph[file])
	}
	return graph, nil
}

// scripts lists the TypeScript files under pwa/src, declarations left out.
func scripts(root string) ([]string, error) {
	var found []string
	err := fs.WalkDir(os.DirFS(root), sources, func(name string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() && strings.HasSuffix(name, ".ts") && !strings.HasSuffix(name, ".d.ts") {
			found = append(found, name)
		}
		return err
	})
	return found, err
}

// valueImports reads who imports whom out of the bundler's metafile.
func valueImports(metafile string) (map[string][]string, error) {
	var facts struct {
		Inputs map[string]struct {
			Imports []struct {
				Path string `json:"path"`
			} `json:"imports"`
		} `json:"inputs"`
	}
	if err := json.Unmarshal([]byte(metafile), &facts); err != nil {
		return nil, err
	}
	graph := map[string][]string{}
	for file, input := range facts.Inputs {
		if !strings.HasPrefix(file, sources+"/") {
			continue
		}
		graph[file] = nil
		for _, imported := range input.Imports {
			if strings.HasPrefix(imported.Path, sources+"/") {
				graph[file] = append(graph[file], imported.Path)
			}
		}
	}
	return graph, nil
}

var importPath = regexp.MustCompile(`(?:\bfrom\s*|\bimport\s*\(\s*)["'](\.[^"']*)["']`)

// writtenImports finds the relative imports that stand in the text, types included.
func writtenImports(file, text string, known []string) []string {
	var found []string
	for _, match := range importPath.FindAllStringSubmatch(text, -1) {
		target := path.Join(path.Dir(file), match[1])
		for _, candidate := range []string{target, target + ".ts", target + "/index.ts", strings.TrimSuffix(target, ".js") + ".ts"} {
			if slices.Contains(known, candidate) {
				found = append(found, candidate)
				break
			}
		}
	}
	return found
}
