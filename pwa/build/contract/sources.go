package contract

import (
	"fmt"
	"slices"
	"strings"

	"rimside/calc/registry"
)

const sourceGround = `export type Mark = "published" | "practice" | "memory" | "ours"; // in a named source; no source to quote; to be confirmed; our choice

export interface Source {
  readonly group: string;
  readonly words: string;
  readonly formula: string; // "" for a plain constant
  readonly values: readonly { readonly words: string; readonly value: number; readonly unit: string }[];
  readonly from: string;
  readonly mark: Mark;
  readonly usedBy: readonly Name[];
}

`

// Sources writes the constants and formulas that the calculations rest on. What several rest on stands once.
func Sources(names []string, of func(name string) []registry.Source) []byte {
	var list []registry.Source
	usedBy := map[string][]string{}
	for _, name := range names {
		for _, s := range of(name) {
			key := s.Group + "\n" + s.Words
			if usedBy[key] == nil {
				list = append(list, s)
			}
			if !slices.Contains(usedBy[key], name) {
				usedBy[key] = append(usedBy[key], name)
			}
		}
	}
	var out strings.Builder
	fmt.Fprintf(&out, madeBy, "the sources of calc/registry")
	out.WriteString("import type { Name } from \"./contract.ts\";\n\n" + sourceGround + "export const sources: readonly Source[] = [\n")
	for _, s := range list {
		values := make([]string, len(s.Values))
		for i, v := range s.Values {
			values[i] = fmt.Sprintf("{ words: %s, value: %s, unit: %s }", literal(v.Words), literal(v.Value), literal(v.Unit))
		}
		fmt.Fprintf(&out, "  { group: %s, words: %s, formula: %s, values: [%s], from: %s, mark: %s, usedBy: %s },\n", literal(s.Group), literal(s.Words),
			literal(s.Formula), strings.Join(values, ", "), literal(s.From), literal(s.Mark), literal(usedBy[s.Group+"\n"+s.Words]))
	}
	out.WriteString("];\n")
	return []byte(out.String())
}
