package layers_test

import "testing"

// A rule that lets everything pass would never be noticed, so each is shown made-up imports of both kinds.

func TestTheGoRuleCatchesWhatItIsFor(t *testing.T) {
	for _, test := range []struct {
		from, to string
		fine     bool
	}{
		{"rimside/calc/tyre", "rimside/calc/unit", true},
		{"rimside/calc/pressure", "rimside/calc/air", true},
		{"rimside/calc/registry", "rimside/calc/pressure", true},
		{"rimside/calc/unit", "math", true},
		{"rimside/calc/wasm", "syscall/js", true},
		{"rimside/calc/unit", "rimside/calc/tyre", false},
		{"rimside/calc/road", "rimside/calc/registry", false},
		{"rimside/calc/registry", "rimside/calc/wasm", false},
		{"rimside/calc/wings", "rimside/calc/unit", false},
		{"rimside/calc/tyre", "rimside/calc/wings", false},
		{"rimside/calc/tyre", "golang.org/x/exp/maps", false},
		{"rimside/calc/tyre", "os", false},
		{"rimside/calc/tyre", "time", false},
		{"rimside/calc/tyre", "net/http", false},
		{"rimside/calc/tyre", "math/rand/v2", false},
		{"rimside/calc/registry", "syscall/js", false},
		{"rimside/calc/tyre", "rimside/store/record", false},
		{"rimside/calc/tyre", "rimside/server/web", false},
		{"rimside/calc/tyre", "rimside/pwa", false},
		{"rimside/calc/tyre", "rimside", false},
		{"rimside/store/oplog", "rimside/store/record", true},
		{"rimside/store/sqlite", "modernc.org/sqlite", true},
		{"rimside/store/record", "rimside/store/oplog", false},
		{"rimside/store/oplog", "rimside/calc/unit", false},
		{"rimside/store/sqlite", "rimside/server/web", false},
		{"rimside/pwa", "embed", true},
		{"rimside/pwa/build", "rimside/pwa/build/bundle", true},
		{"rimside/pwa", "rimside/pwa/build/bundle", false},
		{"rimside/pwa/build", "rimside/pwa", false},
		{"rimside/pwa/build", "rimside/calc/registry", true},
		{"rimside/pwa/build", "rimside/store/record", true},
		{"rimside/pwa/build", "rimside/calc/pressure", false},
		{"rimside/pwa", "rimside/calc/registry", false},
		{"rimside/calc/ground", "gonum.org/v1/gonum/dsp/fourier", true},
		{"rimside/calc/spokes", "gonum.org/v1/gonum/dsp/fourier", true},
		{"rimside/calc/ground", "gonum.org/v1/gonum/mat", false},
		{"rimside/calc/pressure", "gonum.org/v1/gonum/dsp/fourier", false},
		{"rimside/pwa/journey", "rimside/server/cli", false},
		{"rimside/server", "rimside/server/cli", true},
		{"rimside/server/cli", "rimside/server/web", true},
		{"rimside/server/web", "rimside/server/access", true},
		{"rimside/server/web", "rimside/calc/registry", true},
		{"rimside/server/web", "rimside/pwa", true},
		{"rimside/server/access", "rimside/store/sqlite", true},
		{"rimside/server/web", "rimside/server/cli", false},
		{"rimside/server/cli", "rimside/server", false},
		{"rimside/server/access", "rimside/server/trust", false},
		{"rimside/server/trust", "rimside/server/access", false},
		{"rimside/server/access", "rimside/server/web", false},
		{"rimside/server/trust", "rimside/server/cli", false},
		{"rimside/server/web", "rimside/pwa/build/bundle", false},
		{"rimside/server/wings", "rimside/server/web", false},
		{"rimside/wings", "rimside/calc/unit", false},
	} {
		agree(t, goRule, test.from, test.to, test.fine)
	}
}

func TestTheScriptRuleCatchesWhatItIsFor(t *testing.T) {
	for _, test := range []struct {
		from, to string
		fine     bool
	}{
		{"main.ts", "screens/pressure/screen.ts", true},
		{"main.ts", "log/write.ts", true},
		{"sw.ts", "log/idb.ts", true},
		{"calc-worker.ts", "calc-protocol.ts", true},
		{"log/write.ts", "log/idb.ts", true},
		{"book/view.ts", "words/index.ts", true},
		{"book/view.ts", "log/draft.ts", true},
		{"book/view.ts", "contract/contract.ts", true},
		{"ui/field.ts", "contract/contract.ts", true},
		{"contract/contract.ts", "words/index.ts", false},
		{"log/write.ts", "contract/contract.ts", false},
		{"ui/field.ts", "words/index.ts", true},
		{"ui/field.ts", "ui/field.css", true},
		{"screens/pressure/a.ts", "screens/pressure/b.ts", true},
		{"screens/pressure/a.ts", "book/view.ts", true},
		{"log/write.test.ts", "ui/testing.ts", true},
		{"log/write.ts", "ui/el.ts", false},
		{"log/write.ts", "screens/pressure/a.ts", false},
		{"log/write.ts", "book/view.ts", false},
		{"log/write.ts", "main.ts", false},
		{"log/write.ts", "ui/testing.ts", false},
		{"log/write.test.ts", "ui/el.ts", false},
		{"book/view.ts", "ui/el.ts", false},
		{"book/view.ts", "screens/pressure/a.ts", false},
		{"words/index.ts", "ui/el.ts", false},
		{"words/index.ts", "log/idb.ts", false},
		{"ui/field.ts", "book/view.ts", false},
		{"ui/screen.ts", "log/book_log.ts", true},
		{"ui/screen.ts", "book/view.ts", false},
		{"ui/field.ts", "log/idb.ts", false},
		{"ui/field.ts", "screens/pressure/a.ts", false},
		{"ui/field.ts", "app.ts", false},
		{"screens/pressure/a.ts", "screens/checks/a.ts", false},
		{"screens/pressure/a.ts", "screens/shared.ts", false},
		{"screens/pressure/a.ts", "screens/shared/a.ts", true},
		{"screens/shared/a.ts", "screens/pressure/a.ts", false},
		{"screens/shared/a.ts", "ui/field.ts", true},
		{"ui/field.ts", "screens/shared/a.ts", false},
		{"screens/pressure/a.ts", "calc-client.ts", false},
		{"screens/pressure/a.ts", "ui/field.test.ts", false},
		{"sw.ts", "ui/el.ts", false},
		{"sw.ts", "main.ts", false},
		{"calc-worker.ts", "log/idb.ts", false},
		{"main.ts", "sw.ts", false},
		{"main.ts", "ui/testing.ts", false},
		{"wings/a.ts", "words/index.ts", false},
		{"wings/a.ts", "wings/b.ts", false},
		{"ui/field.ts", "wings/a.ts", false},
	} {
		agree(t, scriptRule, "pwa/src/"+test.from, "pwa/src/"+test.to, test.fine)
	}
}

func agree(t *testing.T, rule func(from, to string) bool, from, to string, fine bool) {
	t.Helper()
	wrong := graph{from: {to}}.check(rule)
	if fine != (len(wrong) == 0) || len(wrong) > 1 {
		t.Errorf("%s imports %s: the rule says %q, allowed is %v", from, to, wrong, fine)
	}
}
