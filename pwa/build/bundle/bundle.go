// Package bundle turns the TypeScript of pwa/src into scripts for the browser, and tells which file imports which.
package bundle

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// Result is one bundled entry: its script, and its style sheet when it imports one.
type Result struct {
	Script, Style []byte
}

// Script bundles the entry (a path under root with forward slashes) into one classic script. Classic scripts run the
// same as a page's module, as a worker and as a service worker. The defines replace names in the source by JSON values.
func Script(root, entry string, defines map[string]string) (Result, error) {
	return whole(root, entry, api.FormatIIFE, defines)
}

// Style gives the one style sheet of all that the entry imports, now or later. It is empty when nothing imports any.
func Style(root, entry string, defines map[string]string) ([]byte, error) {
	result, err := whole(root, entry, api.FormatESModule, defines) // a module may wait at its top level
	return result.Style, err
}

func whole(root, entry string, format api.Format, defines map[string]string) (Result, error) {
	options, err := options(root, []string{entry})
	if err != nil {
		return Result{}, err
	}
	options.Define, options.Format = defines, format
	built := api.Build(options)
	if err := problems(built.Errors); err != nil {
		return Result{}, err
	}
	var result Result
	for _, file := range built.OutputFiles {
		switch filepath.Ext(file.Path) {
		case ".js":
			result.Script = file.Contents
		case ".css":
			result.Style = file.Contents
		}
	}
	return result, nil
}

// options are the settings that every bundle shares.
func options(root string, entries []string) (api.BuildOptions, error) {
	root, err := filepath.Abs(root)
	if err != nil {
		return api.BuildOptions{}, err
	}
	for _, entry := range entries {
		if _, err := os.Stat(filepath.Join(root, filepath.FromSlash(entry))); err != nil {
			return api.BuildOptions{}, fmt.Errorf("%s is needed: %w", entry, err)
		}
	}
	runtime, err := runtimePlugin(root)
	if err != nil {
		return api.BuildOptions{}, err
	}
	return api.BuildOptions{
		AbsWorkingDir: root,
		EntryPoints:   entries,
		Outdir:        filepath.Join(root, "pwa", "dist"), // names the outputs; nothing is written
		Write:         false,
		Bundle:        true,
		Format:        api.FormatIIFE,
		Platform:      api.PlatformBrowser,
		Engines: []api.Engine{
			{Name: api.EngineSafari, Version: "16"},
			{Name: api.EngineChrome, Version: "109"},
			{Name: api.EngineFirefox, Version: "115"},
		},
		MinifyWhitespace:  true,
		MinifyIdentifiers: true,
		MinifySyntax:      true,
		Sourcemap:         api.SourceMapNone,
		LegalComments:     api.LegalCommentsNone,
		Charset:           api.CharsetUTF8,
		TsconfigRaw:       `{"compilerOptions":{"strict":true,"useDefineForClassFields":true}}`,
		Plugins:           []api.Plugin{runtime},
		LogLevel:          api.LogLevelSilent,
	}, nil
}

// problems joins the bundler's messages into one error, each with its place.
func problems(messages []api.Message) error {
	var all []error
	for _, message := range messages {
		where := ""
		if at := message.Location; at != nil {
			where = fmt.Sprintf("%s:%d:%d: ", at.File, at.Line, at.Column+1)
		}
		all = append(all, errors.New(where+strings.TrimSpace(message.Text)))
	}
	return errors.Join(all...)
}
