package contract

import (
	"fmt"
	"strings"

	"rimside/calc/registry"
)

const madeBy = "// Made by go generate out of %s. Change that, not this.\n\n"

// from is where the tables are at home.
const from = "the tables of calc/registry"

// tableGround says what a field table is.
const tableGround = `// FieldTable is what a form needs to know of a request's fields, by dotted path; "*" stands for the items of a list.
export type FieldTable = Readonly<Record<string, FieldRow>>;

export interface FieldRow {
  readonly type: "number" | "integer" | "boolean" | "choice" | "day" | "object" | "list" | "text";
  readonly unit?: string; // of a number; none for a bare one
  readonly min?: number; // of a number; of a list, its least length
  readonly max?: number;
  readonly choices?: readonly string[];
  readonly optional?: true;
  readonly instead?: number | string | boolean; // what is taken when it is left out
  readonly usual?: readonly { readonly up_to: number; readonly value: number }[]; // what may be assumed, by printed width
}
`

// ground is what does not depend on the tables.
const ground = `export type { FieldRow, FieldTable } from "./field_table.ts";

// Name is that of a calculation.
export type Name = keyof Requests;

// CalcError is one thing that is wrong with a request: where, and what a sentence about it needs.
export interface CalcError {
  readonly code: ErrorCode;
  readonly field: string; // a dotted path; "" for the whole
  readonly values: Readonly<Record<string, number | string | boolean | readonly string[]>>;
}

// Result is what a calculation said: an answer, or all that is wrong with the request.
export type Result<N extends Name> =
  | { readonly answer: Answers[N]; readonly errors: readonly [] }
  | { readonly answer: undefined; readonly errors: readonly CalcError[] };

`

// FieldTables writes each calculation's field table as a file of its own, by the file's name, so that a script brings along those
// that it uses and no others. (The bundler puts a file into every script that leads to it, so no other file passes them on.)
func FieldTables(contracts []registry.Contract) map[string][]byte {
	files := map[string][]byte{"field_table.ts": fmt.Appendf(nil, madeBy+tableGround, from)}
	for _, c := range contracts {
		files[tableFile(c.Name)] = fmt.Appendf(nil, madeBy+"import type { FieldTable } from \"./field_table.ts\";\n\n"+
			"export const %sFields = {\n%s} as const satisfies FieldTable;\n", from, c.Name, rows(c.Request))
	}
	return files
}

func tableFile(name string) string { return name + "_fields.ts" }

// Calculations writes the types and the constants.
func Calculations(contracts []registry.Contract, constants []registry.Constant) []byte {
	var out strings.Builder
	fmt.Fprintf(&out, madeBy, from)
	out.WriteString(ground)
	fmt.Fprintf(&out, "export type ErrorCode = %s;\n\n", union(registry.Codes(), false))
	writeMap(&out, "Requests", contracts, "Request")
	writeMap(&out, "Answers", contracts, "Answer")
	for _, c := range contracts {
		fmt.Fprintf(&out, "export interface %sRequest %s\n\n", title(c.Name), members(c.Request, ""))
		fmt.Fprintf(&out, "export type %sAnswer = %s;\n\n", title(c.Name), typeOf(c.Answer, ""))
	}
	for _, c := range constants {
		fmt.Fprintf(&out, "// %s: %s\nexport const %s = %s;\n", c.Name, about(c), camel(c.Name), literal(c.Value))
	}
	return []byte(out.String())
}

func writeMap(out *strings.Builder, name string, contracts []registry.Contract, suffix string) {
	fmt.Fprintf(out, "export interface %s {\n", name)
	for _, c := range contracts {
		fmt.Fprintf(out, "  readonly %s: %s%s;\n", c.Name, title(c.Name), suffix)
	}
	out.WriteString("}\n\n")
}

func about(c registry.Constant) string {
	if c.Unit == "" {
		return c.About
	}
	return c.About + ", " + c.Unit
}

func rows(table []*registry.Field) string {
	var out strings.Builder
	for _, row := range registry.Rows(table) {
		fmt.Fprintf(&out, "  %q: {%s},\n", row.Path, strings.Join(facts(row.Field), ", "))
	}
	return out.String()
}

func facts(f *registry.Field) []string {
	kind := string(f.Kind)
	all := []string{"type: " + literal(kind)}
	if f.Unit != "" {
		all = append(all, "unit: "+literal(f.Unit))
	}
	if kind == "number" || kind == "integer" || kind == "list" {
		all = append(all, "min: "+literal(f.Min), "max: "+literal(f.Max))
	}
	if len(f.Choices) > 0 {
		all = append(all, "choices: "+literal(f.Choices))
	}
	if f.Optional {
		all = append(all, "optional: true")
	}
	if f.Default != nil {
		all = append(all, "instead: "+literal(f.Default))
	}
	if len(f.Usual) > 0 {
		usual := make([]string, len(f.Usual))
		for i, u := range f.Usual {
			usual[i] = fmt.Sprintf("{up_to: %s, value: %s}", literal(u.UpTo), literal(u.Value))
		}
		all = append(all, "usual: ["+strings.Join(usual, ", ")+"]")
	}
	return all
}
