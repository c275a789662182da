package contract

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"rimside/store/record"
)

const kindGround = `export interface KindField {
  readonly type: "number" | "text" | "choice" | "flag" | "ref" | "day" | "time" | "blob" | "list" | "object" | "any";
  readonly unit?: string; // of a number; "" for a bare one
  readonly min?: number; // of a number
  readonly max?: number; // of a number; of a text, its length in characters
  readonly options?: readonly string[]; // of a choice
  readonly kinds?: readonly string[]; // what a ref may point to; "*" is anything
  readonly of?: KindField; // what a list holds
}

export interface Kind {
  readonly is: "description" | "entry" | "control"; // edited in place, written once, or told to whoever holds the record
  readonly fields: Readonly<Record<string, KindField>>;
}

`

// Records writes what records may hold: as types, and as the list that forms and readers go by.
func Records(schema int, kinds map[string]record.Kind) []byte {
	var out strings.Builder
	fmt.Fprintf(&out, madeBy, "store/record/kinds.json")
	out.WriteString(kindGround)
	fmt.Fprintf(&out, "// schema is the version of the list, written into every op.\nexport const schema = %d;\n\n", schema)
	names := slices.Sorted(maps.Keys(kinds))
	out.WriteString("// Records are the fields of each kind. Any may be missing, and null is one that was taken back.\nexport interface Records {\n")
	for _, name := range names {
		fmt.Fprintf(&out, "  readonly %s: {\n%s  };\n", name, recordMembers(name, kinds[name].Fields))
	}
	out.WriteString("}\n\nexport type KindName = keyof Records;\n\nexport const kinds = {\n")
	for _, name := range names {
		fmt.Fprintf(&out, "  %s: {is: %s, fields: {\n%s  }},\n", name, literal(kinds[name].Is), recordRows(name, kinds[name].Fields))
	}
	out.WriteString("} as const satisfies Readonly<Record<KindName, Kind>>;\n")
	return []byte(out.String())
}

func recordMembers(kind string, fields map[string]record.Field) string {
	var out strings.Builder
	for _, name := range inOrder(kind, fields) {
		fmt.Fprintf(&out, "    readonly %s?: %s | null;", name, recordType(fields[name]))
		if unit := fields[name].Unit; unit != "" {
			out.WriteString(" // " + unit)
		}
		out.WriteString("\n")
	}
	return out.String()
}

func recordType(f record.Field) string {
	switch f.Type {
	case "number", "time":
		return "number"
	case "flag":
		return "boolean"
	case "choice":
		return union(f.Options, false)
	case "text", "ref", "day", "blob":
		return "string"
	case "object":
		return "Readonly<Record<string, unknown>>"
	case "list":
		return "readonly " + recordType(*f.Of) + "[]"
	case "any":
		return "unknown"
	}
	panic("no type is known for a record's " + f.Type) // a type that was added to kinds.json alone
}

func recordRows(kind string, fields map[string]record.Field) string {
	var out strings.Builder
	for _, name := range inOrder(kind, fields) {
		fmt.Fprintf(&out, "    %s: %s,\n", name, recordRow(fields[name]))
	}
	return out.String()
}

func recordRow(f record.Field) string {
	facts := []string{"type: " + literal(f.Type)}
	if f.Type == "number" || f.Unit != "" {
		facts = append(facts, "unit: "+literal(f.Unit))
	}
	if f.Min != nil {
		facts = append(facts, "min: "+literal(*f.Min))
	}
	if f.Max != nil {
		facts = append(facts, "max: "+literal(*f.Max))
	}
	if len(f.Options) > 0 {
		facts = append(facts, "options: "+literal(f.Options))
	}
	if len(f.Kinds) > 0 {
		facts = append(facts, "kinds: "+literal(f.Kinds))
	}
	if f.Of != nil {
		facts = append(facts, "of: "+recordRow(*f.Of))
	}
	return "{" + strings.Join(facts, ", ") + "}"
}

// inOrder lists the fields as kinds.json has them; those of a kind that is not there by name.
func inOrder(kind string, fields map[string]record.Field) []string {
	names := record.FieldNames(kind)
	if len(names) != len(fields) {
		return slices.Sorted(maps.Keys(fields))
	}
	return names
}
