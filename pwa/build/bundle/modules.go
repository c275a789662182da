package bundle

import (
	"encoding/json"
	"maps"
	"path"
	"path/filepath"
	"slices"

	"github.com/evanw/esbuild/pkg/api"
)

// Modules is an entry split into scripts: those that it needs at once, and those that it loads when they are first wanted.
type Modules struct {
	Files map[string][]byte // by name; they load each other from beside themselves
	Entry string
	First []string // what the entry cannot begin without, itself left out
	Begin []string // the sources in the entry and in First, as paths under root with forward slashes
}

// Split bundles the entry (a path under root with forward slashes) into modules, its styles left out. What is imported by import()
// lands in files of its own; all that the entry cannot begin without stays in one.
func Split(root, entry string, defines map[string]string) (Modules, error) {
	options, err := options(root, []string{entry})
	if err != nil {
		return Modules{}, err
	}
	options.Define = defines
	plugin, err := together(options.AbsWorkingDir, entry)
	if err != nil {
		return Modules{}, err
	}
	options.Plugins = append(options.Plugins, plugin)
	options.Format, options.Splitting, options.Metafile = api.FormatESModule, true, true
	options.EntryNames, options.ChunkNames = "[name]", "[name]-[hash]"
	options.Loader = map[string]api.Loader{".css": api.LoaderEmpty}
	built := api.Build(options)
	if err := problems(built.Errors); err != nil {
		return Modules{}, err
	}
	modules := Modules{Files: map[string][]byte{}}
	for _, file := range built.OutputFiles {
		modules.Files[filepath.Base(file.Path)] = file.Contents
	}
	return modules, modules.order(built.Metafile, entry)
}

// order finds the entry's own file and what it imports at once, from the bundler's account of what it made.
func (m *Modules) order(metafile, entry string) error {
	var facts struct {
		Outputs map[string]struct {
			EntryPoint string `json:"entryPoint"`
			Inputs     map[string]struct{}
			Imports    []struct {
				Path, Kind string
			} `json:"imports"`
		} `json:"outputs"`
	}
	if err := json.Unmarshal([]byte(metafile), &facts); err != nil {
		return err
	}
	var follow func(output string)
	follow = func(output string) {
		m.Begin = append(m.Begin, slices.Sorted(maps.Keys(facts.Outputs[output].Inputs))...)
		for _, imported := range facts.Outputs[output].Imports {
			if name := path.Base(imported.Path); imported.Kind == "import-statement" && !slices.Contains(m.First, name) {
				m.First = append(m.First, name)
				follow(imported.Path)
			}
		}
	}
	for output, made := range facts.Outputs {
		if made.EntryPoint == entry {
			m.Entry = path.Base(output)
			follow(output)
		}
	}
	return nil
}
