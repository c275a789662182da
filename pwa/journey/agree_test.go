package journey

import (
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/evanw/esbuild/pkg/api"

	"rimside/store/oplog"
)

// The phone's TypeScript and the server's Go are to say the same of every op that anybody could send: whether it is taken,
// whether it is the one that is known, what is left of it once it is erased, and what a record's ops come to. Ten thousand
// random ops in every run; RIMSIDE_OPS draws more. What is no JSON at all is not drawn: a server never gets as far as its ops.
func TestGoAndTypeScriptAgree(t *testing.T) {
	count := 10_000
	if text := os.Getenv("RIMSIDE_OPS"); text != "" {
		var err error
		if count, err = strconv.Atoi(text); err != nil || count < 1 {
			t.Fatalf("RIMSIDE_OPS cannot be %q: give a number from 1", text)
		}
	}
	script := bundled(t, "op", "agree.test.ts")
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/agree.js" {
			w.Header().Set("Content-Type", "text/javascript; charset=utf-8")
			_, _ = w.Write(script)
			return
		}
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		_, _ = io.WriteString(w, `<!doctype html><html lang="en"><head><link rel="icon" href="data:,"><script src="/agree.js"></script></head><body></body></html>`)
	}))
	t.Cleanup(server.Close)
	p := OpenBrowser(t).Open(server.URL)
	p.Eventually("the script", func() bool { return Eval[bool](p, `"agree" in globalThis`) })
	draw := &drawer{rand.New(rand.NewPCG(16, 6))}
	seen := map[string]int{} // what the cases are about
	for drawn, failed := 0, 0; drawn < count && failed < 5; {
		var cases [][]string
		for range 200 {
			cases = append(cases, draw.texts())
			drawn += len(cases[len(cases)-1])
		}
		for i, theirs := range Eval[[]string](p, "agree("+written(cases)+")") {
			ours := verdictOf(cases[i], seen)
			if ours != theirs && failed < 5 {
				failed++
				t.Errorf("of\n%s\nGo says\n%s\nTypeScript says\n%s", strings.Join(cases[i], "\n"), ours, theirs)
			}
		}
	}
	t.Logf("%d of each: %v", count, seen)
	for _, verdict := range []string{"new", "same", "other", "op_malformed", "at_out_of_range", "erased", "clash", "hidden"} {
		if seen[verdict] < count/500 {
			t.Errorf("only %d of %d ops were about %q", seen[verdict], count, verdict)
		}
	}
}

// bundled is one script of the phone's log.
func bundled(t testing.TB, path ...string) []byte {
	t.Helper()
	built := api.Build(api.BuildOptions{
		EntryPoints: []string{filepath.Join(append([]string{moduleRoot(t), "pwa", "src", "log"}, path...)...)},
		Bundle:      true, Format: api.FormatIIFE, Target: api.ES2022, Charset: api.CharsetUTF8, Sourcemap: api.SourceMapInline,
	})
	if len(built.Errors) > 0 {
		t.Fatalf("bundling: %v", built.Errors)
	}
	return built.OutputFiles[0].Contents
}

// verdictOf is this program's side of verdict in agree.test.ts.
func verdictOf(texts []string, seen map[string]int) string {
	var said []string
	var ops []oplog.Op
	for _, text := range texts {
		op, fault := oplog.Parse([]byte(text))
		if fault != nil {
			said = append(said, fault.Code+" "+fault.ID)
			seen[fault.Code]++
			continue
		}
		found := "new"
		if at := slices.IndexFunc(ops, func(each oplog.Op) bool { return each.ID == op.ID }); at >= 0 {
			found = "other"
			if ops[at].Rec == op.Rec && oplog.Same(ops[at].Raw, op.Raw) {
				found = "same"
			}
		} else {
			ops = append(ops, op)
		}
		seen[found]++
		said = append(said, found, string(op.Erase().Raw))
	}
	picture := ""
	if len(ops) > 0 {
		rec := ops[0].Rec
		state := oplog.Merge(slices.DeleteFunc(ops, func(op oplog.Op) bool { return op.Rec != rec }))
		picture = pictureOf(state)
		for about, is := range map[string]bool{"erased": state.Erased, "clash": len(state.Conflicts) > 0, "hidden": state.Deleted} {
			if is {
				seen[about]++
			}
		}
	}
	return strings.Join(append(said, picture), "\n")
}

func pictureOf(state oplog.State) string {
	field := func(of oplog.Field) string {
		var all []string
		for _, each := range append([]oplog.Candidate{of.Winner}, of.Siblings...) {
			all = append(all, fmt.Sprintf("%s(%s)", each.Op, strings.Join(each.Ops, " ")))
		}
		return strings.Join(all, "|")
	}
	var fields, names []string
	for name, of := range state.Fields {
		fields = append(fields, quotedName(name)+"="+field(of))
	}
	for _, name := range state.Conflicts {
		names = append(names, quotedName(name))
	}
	slices.Sort(fields)
	slices.Sort(names)
	deletion := ""
	if state.Deletion != nil {
		deletion = field(*state.Deletion)
	}
	all := []string{state.Kind, fmt.Sprint(state.Erased), fmt.Sprint(state.Deleted), fmt.Sprint(state.Newest), strings.Join(names, ","), strings.Join(state.Unseen, ","), deletion}
	return strings.Join(append(all, fields...), " ")
}

// quotedName writes a name as the phone does.
func quotedName(name string) string {
	var out strings.Builder
	encoder := json.NewEncoder(&out)
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(name); err != nil {
		panic(err) // a text always marshals
	}
	return strings.NewReplacer(`\u2028`, "\u2028", `\u2029`, "\u2029").Replace(strings.TrimSpace(out.String()))
}

// drawer draws ops from few ids, records, names and values, so that they have to do with each other.
type drawer struct{ *rand.Rand }

func pick[T any](d *drawer, from ...T) T { return from[d.IntN(len(from))] }

func (d *drawer) id() string { return fmt.Sprintf("%032x", 1+d.IntN(4)) }

func (d *drawer) texts() (texts []string) {
	for range 2 + d.IntN(6) {
		texts = append(texts, d.op())
	}
	return texts
}

func (d *drawer) op() string {
	rec := pick(d, `"000000000000000000000000000000aa"`, `"000000000000000000000000000000aa"`, `"000000000000000000000000000000aa"`, `"000000000000000000000000000000bb"`)
	members := []string{
		`"id":"` + d.id() + `"`,
		`"at":` + pick(d, "1790000000000", "1790000000000", "1790000000001", "1790000000002", "1.790000000003e12"),
		`"kind":` + pick(d, `"tyre"`, `"tyre"`, `"tyre"`, `"wheel"`, `"erase"`, `"<lamp>"`),
		`"rec":` + rec,
		`"set":` + d.object(),
	}
	if d.IntN(2) == 0 {
		members = append(members, `"bases":{`+pick(d, `"a"`, `"deleted"`, `"<b>"`, `"__proto__"`)+`:["`+d.id()+`","`+d.id()+`"]`+pick(d, "", `,"a":["`+d.id()+`"]`, `,"z":[]`)+`}`)
	}
	if d.IntN(3) == 0 {
		members = append(members, `"seen":["`+d.id()+`","`+d.id()+`"]`)
	}
	if d.IntN(8) == 0 {
		members = append(members, `"erased":`+pick(d, "true", "true", "false"))
	}
	if d.IntN(4) == 0 {
		members = append(members, pick(d, `"author":""`, `"device":"x"`, `"schema":1`, `"schema":2.0`, `"new":{"a":[1]}`, `"new":1e400`))
	}
	if d.IntN(8) == 0 {
		members = d.spoilt(members)
	}
	d.Shuffle(len(members), func(i, j int) { members[i], members[j] = members[j], members[i] })
	return "{" + strings.Join(members, pick(d, ",", ",", ", ", " ,\n")) + "}"
}

// spoilt makes one member wrong, or wants it twice or not at all.
func (d *drawer) spoilt(members []string) []string {
	at := d.IntN(len(members))
	name, _, _ := strings.Cut(members[at], ":")
	switch d.IntN(4) {
	case 0:
		return slices.Delete(members, at, at+1)
	case 1:
		return append(members, members[at])
	case 2:
		return append(members, `"at":`+pick(d, "1", "-1", "1e99", "1790000000000.5", "7289654400000", "1577836799999", "true"))
	}
	members[at] = name + ":" + pick(d, "null", "1", `"x"`, "[]", "{}", "true", `{"a":{"b":1}}`, `["x"]`, `"\ud800"`, `"0000000000000000000000000000000A"`, `{"\ud83d":1}`, "1e400")
	return members
}

func (d *drawer) object() string {
	if d.IntN(5) == 0 {
		return `{"deleted":` + pick(d, "true", "true", "true", "false", " true", "null", "1") + `}`
	}
	var members []string
	for range d.IntN(3) {
		name := pick(d, `"a"`, `"a"`, `"<b>"`, `"__proto__"`, `"constructor"`, `"é"`, `"\u00e9"`, `"😀"`, `"\ue000"`, `"a\u2028&"`, `"\n\t\u0001\u007f"`, `""`, `"10"`, `"9"`)
		members = append(members, name+":"+d.value())
	}
	return "{" + strings.Join(members, ",") + "}"
}

func (d *drawer) value() string {
	return pick(d, "1", "1.0", "10e-1", "0", "-0", "0.1", "0.10000000000000001", "1e400", "-1e400", "2e400", "9007199254740993", "9007199254740992", "null", "true", `"x"`, `"\u0078"`, `"<>&"`,
		`"\u003c>&"`, `[1,{"a":1,"b":2}]`, `[1.0,{"b":2,"a":1}]`, `{"a":1,"a":2}`, `{"a":2}`, `{}`, `[]`, `"😀"`, `"\ud83d\ude00"`, `"é"`, `"e\u0301"`, `" "`, `"\/"`, `"/"`)
}
