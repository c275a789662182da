package contract

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/evanw/esbuild/pkg/api"

	"rimside/calc/registry"
	"rimside/store/record"
)

// What is written parses as TypeScript. (Its types are checked with all others.)
func TestFilesAreTypeScript(t *testing.T) {
	for name, text := range Files() {
		made := api.Transform(string(text), api.TransformOptions{Loader: api.LoaderTS})
		if len(made.Errors) > 0 || len(made.Warnings) > 0 {
			t.Errorf("%s: %v %v", name, made.Errors, made.Warnings)
		}
	}
}

// Every calculation and every kind of record is there, and each path of a request is in its table.
func TestNothingIsLeftOut(t *testing.T) {
	calculations, kinds := string(Files()["contract.ts"]), string(Files()["kinds.ts"])
	for _, c := range registry.Contracts() {
		if table := string(Files()[c.Name+"_fields.ts"]); !strings.Contains(table, "export const "+c.Name+"Fields = {") {
			t.Errorf("%s has no table: %s", c.Name, table)
		}
		for _, wanted := range []string{
			"readonly " + c.Name + ": " + title(c.Name) + "Request;", "readonly " + c.Name + ": " + title(c.Name) + "Answer;",
			"export interface " + title(c.Name) + "Request {",
		} {
			if !strings.Contains(calculations, wanted) {
				t.Errorf("%s: no %q", c.Name, wanted)
			}
		}
	}
	for _, wanted := range []string{`"front.tyre.label_mm": {type: "number", unit: "mm", min: 18, max: 132},`, `"ground.*.share": `, `"rider_kg": `} {
		if !strings.Contains(string(Files()["pressure_fields.ts"]), wanted) {
			t.Errorf("no %q", wanted)
		}
	}
	for _, wanted := range []string{
		"readonly predicted_mm: number | null; // mm", `readonly sidewall: "cloth" | "glove" | "hose";`,
		"export const hooklessCapKpa = 500;", "export const unreadHoldKpa = 250;", "export const maxFirmness = 2;",
	} {
		if !strings.Contains(calculations, wanted) {
			t.Errorf("no %q", wanted)
		}
	}
	for name, kind := range record.Kinds() {
		if !strings.Contains(kinds, "  "+name+": {is: "+literal(kind.Is)) {
			t.Errorf("no kind %s", name)
		}
	}
}

// A bound, a choice or a name that changes in a table changes what is written.
func TestAChangedTableIsWrittenAnew(t *testing.T) {
	write := func(change func(fields []*registry.Field)) string {
		fields := []*registry.Field{
			{Name: "rider_kg", Kind: registry.Contracts()[0].Request[0].Kind, Unit: "kg", Min: 15, Max: 250},
			registry.Contracts()[1].Request[0],
		}
		change(fields)
		contracts := []registry.Contract{{Name: "trial", Request: fields, Answer: registry.Contracts()[1].Answer}}
		return string(FieldTables(contracts)["trial_fields.ts"])
	}
	before := write(func([]*registry.Field) {})
	if !strings.Contains(before, `"rider_kg": {type: "number", unit: "kg", min: 15, max: 250},`) {
		t.Fatal(before)
	}
	for name, change := range map[string]func([]*registry.Field){
		"lower bound": func(f []*registry.Field) { f[0].Min = 16 },
		"upper bound": func(f []*registry.Field) { f[0].Max = 251 },
		"unit":        func(f []*registry.Field) { f[0].Unit = "g" },
		"name":        func(f []*registry.Field) { f[0].Name = "rider_mass" },
		"optional":    func(f []*registry.Field) { f[0].Optional = true },
		"default":     func(f []*registry.Field) { f[0].Default = 70.0 },
		"choices":     func(f []*registry.Field) { f[0].Choices = []string{"a"} },
	} {
		if write(change) == before {
			t.Errorf("another %s, and the same text", name)
		}
	}
	kinds := func(most float64) string {
		return string(Records(1, map[string]record.Kind{"tyre": {Is: record.Description, Fields: map[string]record.Field{"width": {Type: "number", Max: &most}}}}))
	}
	if kinds(1) == kinds(2) {
		t.Error("another bound of a record, and the same text")
	}
}

// A file that is right stays as it is, one that is not is replaced, and nothing else is left behind.
func TestWriteReplacesOnlyWhatIsNotRight(t *testing.T) {
	root := t.TempDir()
	if err := Write(root); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(root, filepath.FromSlash(Folder), "kinds.ts")
	first, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := Write(root); err != nil {
		t.Fatal(err)
	}
	if again, err := os.Stat(file); err != nil || !os.SameFile(first, again) {
		t.Errorf("a file that was right was written anew (%v)", err)
	}
	if err := os.WriteFile(file, []byte("export {};"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := Write(root); err != nil {
		t.Fatal(err)
	}
	if text, err := os.ReadFile(file); err != nil || !bytes.Equal(text, Files()["kinds.ts"]) {
		t.Errorf("a file that was wrong stayed (%v)", err)
	}
	if left, err := os.ReadDir(filepath.Dir(file)); err != nil || len(left) != len(Files()) {
		t.Errorf("%v are left (%v)", left, err)
	}
}
