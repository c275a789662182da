package registry_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rimside/calc/air"
	"rimside/calc/registry"
	"rimside/calc/tyre"
)

func TestEveryCalculationTellsWhatItRestsOn(t *testing.T) {
	for _, name := range registry.Names() {
		rows := registry.Sources(name)
		if len(rows) == 0 {
			t.Errorf("%s tells no source", name)
		}
		seen := map[string]bool{}
		for _, row := range rows {
			if row.Group == "" || row.Words == "" || row.From == "" {
				t.Errorf("%s: a source without group, words or origin: %+v", name, row)
			}
			if !slices.Contains([]string{"published", "practice", "memory", "ours"}, string(row.Mark)) {
				t.Errorf("%s, %s: %q is no mark", name, row.Words, string(row.Mark))
			}
			if row.Formula == "" && len(row.Values) == 0 {
				t.Errorf("%s, %s: neither formula nor value", name, row.Words)
			}
			if seen[row.Group+row.Words] {
				t.Errorf("%s tells %s twice", name, row.Words)
			}
			seen[row.Group+row.Words] = true
			for _, v := range row.Values {
				if v.Value == 0 || math.IsNaN(v.Value) {
					t.Errorf("%s, %s: %q has no value", name, row.Words, v.Words)
				}
				if len(row.Values) > 1 && v.Words == "" {
					t.Errorf("%s, %s: which value is %v?", name, row.Words, v.Value)
				}
			}
		}
	}
}

func TestSourcesTellTheConstantsInUse(t *testing.T) {
	value := func(calculation, words string, n int) float64 {
		for _, row := range registry.Sources(calculation) {
			if row.Words == words && n < len(row.Values) {
				return row.Values[n].Value
			}
		}
		t.Fatalf("%s does not tell %q", calculation, words)
		return 0
	}
	if got := value("pressure", "Never above this on a straight rim edge", 0); got != tyre.HooklessCap.KPa() {
		t.Errorf("the cap is told as %v kPa", got)
	}
	if got := value("air", "Air pressure at an altitude", 1); got != air.LapseRate {
		t.Errorf("the lapse rate is told as %v", got)
	}
	rims := tyre.MeasuringRims()
	for i, row := range rims {
		if got := value("pressure", "Inner width of the rim on which a tyre is measured, by printed width", i); math.Abs(got-row.Inner.MM()) > 1e-9 {
			t.Errorf("measuring rim %d is told as %v mm", i, got)
		}
	}
}

// untold are the numbers that no answer rests on: steps and slacks of the arithmetic, bounds of the input, and what only tests
// compare with.
var untold = map[string]string{
	"check.wheelRows": "each row tells its own source", "check.brakeRows": "each row tells its own source", "check.barRows": "each row tells its own source",
	"check.frameRows": "each row tells its own source",
	"check.tube":      "a bit", "check.evening": "a bit", "check.mostMeasurable": "bound of the input",
	"spokes.frame": "arithmetic", "spokes.listen": "arithmetic", "spokes.rise": "arithmetic", "spokes.shortest": "arithmetic", "spokes.quietWave": "arithmetic",
	"spokes.lowest": "arithmetic", "spokes.highest": "arithmetic", "spokes.overNoise": "arithmetic", "spokes.underLoudest": "arithmetic", "spokes.mostPeaks": "arithmetic",
	"spokes.band": "arithmetic", "spokes.mostPartials": "arithmetic", "spokes.missing": "arithmetic", "spokes.stiffCosts": "arithmetic", "spokes.stiffSteps": "arithmetic",
	"spokes.sameNote": "arithmetic", "spokes.sureMargin": "arithmetic", "trial.mostRuns": "bound of the answer", "trial.doubts": "steps tried", "trial.enoughRuns": "where the arithmetic ends",
	"ground.tried": "arithmetic", "ground.lineWidth": "arithmetic", "ground.levelLeast": "what stands still", "ground.levelShare": "what stands still",
	"ground.barSteps": "arithmetic", "ground.foldedTo": "where the arithmetic ends", "ground.longestGap": "a hole in the record", "ground.clippedFrom": "a sensor's end",
	"ground.clippedShare": "a sensor's end", "ground.clippedLeast": "a sensor's end", "ground.clippedWidth": "a sensor's end", "ground.speedLowest": "what stands still",
	"ground.bandOfRate": "arithmetic", "ground.hannPower": "arithmetic", "ground.turnMost": "a phone that turns", "ground.turnShare": "a phone that turns",
	"ground.gravityLeast": "a phone that turns", "ground.gravityMost": "a phone that turns", "ground.gravityDoubt": "a phone that turns", "ground.uprightLeast": "a phone that turns",
	"ground.againstMost": "a phone that turns", "ground.standsOut": "a phone that turns", "ground.rearShares": "what is tried",
	"trial.nodes": "arithmetic", "trial.ratioStep": "arithmetic", "trial.ratioFurthest": "arithmetic", "trial.bounded": "arithmetic",
	"trial.forTwo": "places of arms", "trial.forThree": "places of arms", "trial.names": "places of arms",
	"air.tropopause": "where the formula ends", "air.co2Dense": "where the formula ends", "spares.better": "arithmetic", "pressure.searchEdge": "arithmetic", "pressure.MaxFirmness": "bound of the input",
	"pressure.biggerLabels": "sizes on sale", "pressure.curvePoints": "drawing", "pressure.slopeStep": "arithmetic",
	"pressure.noMark": "no limit at all", "pressure.markSlack": "arithmetic", "pressure.ratioSlack": "arithmetic",
	"road.tooNear": "arithmetic", "road.nudge": "arithmetic",
	"road.quarterCarTyre": "only tests compare with the index", "road.quarterCarDamper": "only tests compare with the index",
	"road.quarterCarSpeed": "only tests compare with the index", "tyre.MinLabelMM": "bound of the input", "tyre.MaxLabelMM": "bound of the input",
}

// toldThrough are read by a function that the sources call.
var toldThrough = map[string]string{
	"tyre.measuringRims": "tyre.MeasuringRims", "tyre.casings": "tyre.CasingOf", "road.kinds": "road.Kinds", "pressure.hardSquash": "pressure.HardSquash",
	"pressure.feltBy": "pressure.FeltBy", "pressure.practiceFactor": "pressure.PracticeFactor", "salt.metals": "salt.Metals", "trial.levels": "trial.Level", "pack.torques": "pack.Torques",
}

// A constant that an answer rests on and that the page does not tell would be a number without an origin.
func TestNoConstantIsLeftOut(t *testing.T) {
	told := selectors(t, ".")
	found := map[string]bool{}
	for _, subject := range []string{"air", "tyre", "road", "ride", "pressure", "fit", "salt", "spares", "check", "due", "pack", "spokes", "trial", "ground"} {
		for _, name := range numbers(t, filepath.Join("..", subject)) {
			name = subject + "." + name
			found[name] = true
			through, indirect := toldThrough[name]
			if !indirect {
				through = name
			}
			if why, excused := untold[name]; excused == told[through] {
				t.Errorf("%s: told %v, excused %q: name it in the sources or among the untold", name, told[through], why)
			}
		}
	}
	for name := range maps.Keys(untold) {
		if !found[name] {
			t.Errorf("%s is excused and does not exist", name)
		}
	}
}

// selectors are the names of other packages that the sources use.
func selectors(t *testing.T, folder string) map[string]bool {
	t.Helper()
	out := map[string]bool{}
	for _, file := range parsed(t, folder, func(name string) bool { return strings.HasPrefix(name, "sources") }) {
		ast.Inspect(file, func(node ast.Node) bool {
			if s, is := node.(*ast.SelectorExpr); is {
				if from, is := s.X.(*ast.Ident); is {
					out[from.Name+"."+s.Sel.Name] = true
				}
			}
			return true
		})
	}
	return out
}

// numbers are the constants and variables of a package that a number is written into.
func numbers(t *testing.T, folder string) []string {
	t.Helper()
	var out []string
	for _, file := range parsed(t, folder, func(string) bool { return true }) {
		for _, declared := range file.Decls {
			general, is := declared.(*ast.GenDecl)
			if !is {
				continue
			}
			for _, spec := range general.Specs {
				value, is := spec.(*ast.ValueSpec)
				for i, name := range valueNames(value, is) {
					if i < len(value.Values) && hasNumber(value.Values[i]) {
						out = append(out, name)
					}
				}
			}
		}
	}
	return out
}

func valueNames(value *ast.ValueSpec, is bool) []string {
	var out []string
	for i := 0; is && i < len(value.Names); i++ {
		out = append(out, value.Names[i].Name)
	}
	return out
}

func hasNumber(value ast.Expr) bool {
	found := false
	ast.Inspect(value, func(node ast.Node) bool {
		if _, length := node.(*ast.ArrayType); length {
			return false
		}
		literal, is := node.(*ast.BasicLit)
		found = found || is && (literal.Kind == token.INT || literal.Kind == token.FLOAT)
		return true
	})
	return found
}

func parsed(t *testing.T, folder string, wanted func(name string) bool) []*ast.File {
	t.Helper()
	var out []*ast.File
	names, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil || len(names) == 0 {
		t.Fatal(err, fs.ErrNotExist)
	}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") || !wanted(filepath.Base(name)) {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, file)
	}
	return out
}
