package bundle

import (
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// together keeps all that the entry begins with in one script. The bundler would cut it along who shares what with which later
// script, and a dozen small scripts compress worse than one. Later scripts are only ever loaded by the entry, so each may as well
// import it: then all of the entry's sources are shared by the same scripts, and stay together.
func together(root, entry string) (api.Plugin, error) {
	later, err := laterScripts(root)
	if err != nil {
		return api.Plugin{}, err
	}
	return api.Plugin{Name: "together", Setup: func(build api.PluginBuild) {
		build.OnLoad(api.OnLoadOptions{Filter: `\.ts$`}, func(args api.OnLoadArgs) (api.OnLoadResult, error) {
			name, err := filepath.Rel(root, args.Path)
			if err != nil || !later[filepath.ToSlash(name)] {
				return api.OnLoadResult{}, err
			}
			text, err := os.ReadFile(args.Path)
			if err != nil {
				return api.OnLoadResult{}, err
			}
			back, err := filepath.Rel(filepath.Dir(args.Path), filepath.Join(root, filepath.FromSlash(entry)))
			if err != nil {
				return api.OnLoadResult{}, err
			}
			contents := string(text) + "\nimport " + strconv.Quote("./"+filepath.ToSlash(back)) + ";\n" // last: problems keep their lines
			return api.OnLoadResult{Contents: &contents, Loader: api.LoaderTS}, nil
		})
	}}, nil
}

var laterImport = regexp.MustCompile(`\bimport\s*\(\s*["'](\.[^"']*\.ts)["']`)

// laterScripts finds what is imported by import(), as paths under root with forward slashes. Words are left out: the entry waits
// for them while it begins, and what imports the entry waits for the entry.
func laterScripts(root string) (map[string]bool, error) {
	files, err := scripts(root)
	if err != nil {
		return nil, err
	}
	later := map[string]bool{}
	for _, file := range files {
		text, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(file)))
		if err != nil {
			return nil, err
		}
		for _, match := range laterImport.FindAllStringSubmatch(string(text), -1) {
			if target := path.Join(path.Dir(file), match[1]); !strings.HasPrefix(target, sources+"/words/") {
				later[target] = true
			}
		}
	}
	return later, nil
}
