package journey

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
)

// A paired phone tries to erase twenty tyres at once. Nothing goes until somebody on another phone agrees.
func TestErasingInBulkNeedsASecondPhone(t *testing.T) {
	server := StartServer(t, "-login")
	in := words(t)
	browser := OpenBrowser(t)
	rogue := openOutside(browser, server)
	rogue.Go("settings/phones")
	rogue.pairAs(server.pairingCode(), "Rogue")
	rogue.See(in["pair.done"])
	rogue.Go("settings")
	rogue.nameMe("Cleo") // a book begins, and the phone has its usual name in it
	rogue.See(in["sync.phase.even"])
	owner := openOutside(browser, server)
	owner.Go("settings/phones")
	owner.pairAs(server.pairingCode(), "Owner")
	owner.See(in["pair.done"])

	const count = 20
	push := func(op func(n int) string) string {
		var ops []string
		for n := range count {
			ops = append(ops, op(n))
		}
		return Eval[string](rogue, fmt.Sprintf(`(async () => {
			const {book, log} = await (await fetch("api/book")).json();
			const ops = %s.map((text) => JSON.parse(text));
			const answer = await fetch("api/ops", {method: "POST", headers: {"Content-Type": "application/json"}, body: JSON.stringify({book, log, ops})});
			return answer.text();
		})()`, asJSON(t, ops)))
	}
	push(func(n int) string {
		return fmt.Sprintf(`{"id":"%032x","at":1790000000000,"kind":"tyre","rec":"%032x","set":{"name":"Ochre %d","label_mm":40},"author":"","device":"","schema":1}`, n+1, n+1001, n)
	})
	erase := func() string {
		return push(func(n int) string {
			return fmt.Sprintf(`{"id":"%032x","at":1790000000001,"kind":"erase","rec":"%032x","set":{"kind":"tyre"},"author":"","device":"","schema":1}`, n+2001, n+1001)
		})
	}
	if said := erase(); !strings.Contains(said, `"stored":[]`) || !strings.Contains(said, `"rejected":[]`) {
		t.Fatalf("twenty erasures were answered with %s", said)
	}

	// Whoever erases sees that it waits, and cannot agree.
	rogue.Online()
	rogue.Go("settings")
	rogue.Tap("link", strings.ReplaceAll(in["book.held"], "{n}", fmt.Sprint(count)))
	rogue.See(in["held.mine"])
	rogue.NotSee(in["held.agree"])

	owner.Online()
	owner.Go("settings")
	owner.See(fmt.Sprintf("%d erasures wait", count))
	owner.looksWell("settings while erasures wait")
	owner.Tap("link", strings.ReplaceAll(in["book.held"], "{n}", fmt.Sprint(count)))
	owner.See(fmt.Sprintf("Phone wants to erase %d things", count))
	owner.See("Ochre")
	owner.looksWell("erasures that wait")
	owner.Tap("button", fill(in["held.stopOf"], "name", "Phone"))
	owner.See(in["held.stopDone"])
	owner.See(in["held.stopped"])
	if erase(); strings.Count(server.kept(), "Ochre") != count {
		t.Error("what was stopped is gone")
	}
	owner.Tap("button", fill(in["held.agreeOf"], "name", "Phone"))
	owner.See(fill(in["held.agreed"], "name", "Phone"))
	owner.See(in["held.none"])
	if erase(); strings.Contains(server.kept(), "Ochre") {
		t.Error("what was agreed to is still there")
	}
	owner.Online()
	owner.forgets("the phone that agreed", "Ochre")
}

func asJSON(t *testing.T, value any) string {
	t.Helper()
	text, err := json.Marshal(value)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
