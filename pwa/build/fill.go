package main

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

var placeholder = regexp.MustCompile(`\{\{([^{}]*)\}\}`)

// readSource reads a template of pwa/src.
func readSource(root, name string) ([]byte, error) {
	text, err := os.ReadFile(filepath.Join(root, "pwa", "src", name))
	if err != nil {
		return nil, fmt.Errorf("pwa/src/%s is needed: %w", name, err)
	}
	return text, nil
}

// fill puts the values in place of the template's {{names}}. A name without a value is an error, lest a page be
// shipped with a hole in it.
func fill(name string, template []byte, values map[string]string) ([]byte, error) {
	var unknown []string
	filled := placeholder.ReplaceAllFunc(template, func(match []byte) []byte {
		key := string(match[2 : len(match)-2])
		value, found := values[key]
		if !found {
			unknown = append(unknown, key)
		}
		return []byte(value)
	})
	if len(unknown) > 0 {
		known := strings.Join(slices.Sorted(maps.Keys(values)), " ")
		return nil, fmt.Errorf("pwa/src/%s: no value for {{%s}}; there are: %s", name, unknown[0], known)
	}
	return filled, nil
}
