package journey

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// holding lists the files of the data folder that hold one of these texts, whatever else is in them.
func (s *Server) holding(texts ...string) []string {
	s.t.Helper()
	var found []string
	err := fs.WalkDir(os.DirFS(s.data), ".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return nil // a file that has just gone holds nothing
		}
		content, err := os.ReadFile(filepath.Join(s.data, path))
		if err != nil {
			return nil
		}
		for _, text := range texts {
			if bytes.Contains(content, []byte(text)) {
				found = append(found, path+" holds "+text)
			}
		}
		return nil
	})
	if err != nil {
		s.t.Fatal(err)
	}
	return found
}

// keepCopy puts a copy where the server keeps its own, which it makes by the hour.
func (s *Server) keepCopy() {
	s.t.Helper()
	s.Stop()
	book, err := os.ReadFile(filepath.Join(s.data, "rimside.sqlite"))
	if err == nil {
		err = os.MkdirAll(filepath.Join(s.data, "copies"), 0o700)
	}
	if err == nil {
		err = os.WriteFile(filepath.Join(s.data, "copies", "hourly-1-20260714T1000Z.sqlite"), book, 0o600)
	}
	if err != nil {
		s.t.Fatal(err)
	}
	s.Start()
}

// everything is all that the browser keeps of the book, as JSON.
func (p *Page) everything() string {
	p.t.Helper()
	return Eval[string](p, `(async () => {
		const kept = {...localStorage};
		const done = (request) => new Promise((resolve, reject) => { request.onsuccess = () => resolve(request.result); request.onerror = reject; });
		for (const {name} of await indexedDB.databases()) {
			const db = await done(indexedDB.open(name));
			for (const store of db.objectStoreNames) kept[name + "/" + store] = await done(db.transaction(store).objectStore(store).getAll());
			db.close();
		}
		return JSON.stringify(kept);
	})()`)
}

// forgets waits until nothing that this phone keeps holds one of these texts.
func (p *Page) forgets(who string, texts ...string) {
	p.t.Helper()
	var kept string
	defer func() {
		if p.t.Failed() {
			p.t.Logf("%s keeps %s", who, kept)
		}
	}()
	p.Eventually(who+" to forget", func() bool {
		kept = p.everything()
		for _, text := range texts {
			if strings.Contains(kept, text) {
				return false
			}
		}
		return true
	})
}

// Three phones and a server: a person with a weight and notes is erased on the first. The second is out of reach and has
// written of them meanwhile; the third has their bike open.
func TestAPersonIsErasedEverywhere(t *testing.T) {
	in := words(t)
	server := StartServer(t)
	road := Forward(t, server)
	browser := OpenBrowser(t)
	secrets := []string{"Quirina", "quirina", "73.64", "Zwetschgenwind", "75.31", "Vantablack"}

	a := browser.OpenApart(server.URL())
	a.Type(in["field.rider"], "73.64")
	a.Type(in["field.bike"], "11")
	a.Type(in["field.label"], "50")
	a.Choose(in["pick.setup"], in["setup.tubeless"])
	a.Choose(in["pick.profile"], in["profile.hooked"])
	a.Choose(in["part.ground"], in["kind.pea"])
	a.Tap("button", in["first.go"])
	a.number(in["side.front"])
	a.setUp()
	a.edit(in["field.name"], "Quirina’s Ochre")
	a.board()
	a.Tap("button", in["set.both"])
	a.See(in["set.done"])
	a.Tap("button", in["ride.how"])
	a.harsh()
	a.See("Front: a bit harsh (just now)")
	a.Type(in["notes.field"], "Zwetschgenwind all day")
	a.Tap("button", in["notes.save"])
	a.Go("settings")
	a.Eventually("the person whose phone it is", func() bool { return len(a.options(in["me.who"])) == 2 })
	a.nameMe("Quirina Vale")
	a.onServer(server, "Quirina Vale")
	a.onServer(server, "Zwetschgenwind")

	b, c := browser.OpenApart(road.URL+"/"), browser.OpenApart(server.URL())
	for _, p := range []*Page{b, c} {
		p.number(in["side.front"])
		p.setUp()
		p.See(fill(in["hint.veiled"], "weight", in["recMass.middle"]))
		p.Allow(offline, "ERR_EMPTY_RESPONSE")
	}
	c.board()
	c.Tap("button", in["ride.how"])
	c.Choose(fill(in["ride.felt"], "side", in["ride.side.rear"]), in["ride.option.too_soft"]) // said, and not saved yet
	c.saved("after-ride")
	road.SwitchTo(-1)
	b.edit(in["field.rider"], "75.31")
	b.See("not yet on the server")
	b.Go("settings")
	b.Eventually("the person to choose", func() bool { return slices.Contains(b.options(in["me.who"]), "Quirina Vale") })
	b.Choose(in["me.who"], "Quirina Vale")
	b.Eventually("the name to edit", func() bool { return b.Value(in["me.name"]) == "Quirina Vale" })
	b.nameMe("Quirina Vantablack")
	if kept := b.everything(); !strings.Contains(kept, "75.31") || !strings.Contains(kept, "Vantablack") {
		t.Fatal("the second phone has nothing to bring that must not come through")
	}

	server.keepCopy()
	if found := strings.Join(server.holding("Zwetschgenwind"), " "); !strings.Contains(found, "copies") {
		t.Fatalf("no copy has the person in it: %s", found)
	}
	rec := Eval[string](a, `new Promise((resolve, reject) => {
		const opened = indexedDB.open("rimside-" + localStorage.getItem("rimside-book"));
		opened.onerror = reject;
		opened.onsuccess = () => {
			const asked = opened.result.transaction("meta").objectStore("meta").get("me");
			asked.onsuccess = () => { resolve(asked.result.value); opened.result.close(); };
		};
	})`)
	a.Go("settings/history/" + rec)
	a.Tap("link", in["things.erase"])
	a.Find("heading", fill(in["forget.named"], "name", "Quirina Vale"))
	for _, kind := range []string{"note", "pressure_set"} {
		a.See(fill(in["forget.kind"], "kind", in["recKind."+kind], "n", "2"))
	}
	bike := fill(in["forget.text"], "name", "Bike · Quirina’s Ochre")
	a.See(fill(in["forget.rider"], "name", "Quirina’s Ochre"))
	a.EachLook(func(size Size, _ string) {
		a.Axe()
		a.wide("erasing a person at " + size.Name)
	})
	for _, small := range Eval[[]string](a, smallTargets) {
		t.Errorf("too small to press: %s", small)
	}
	a.Shot("erase-person")
	a.Resize(Phone)
	a.Tap("checkbox", bike)
	a.NotSee(fill(in["forget.rider"], "name", "Quirina’s Ochre"))
	a.Tap("button", in["forget.button"])
	a.See(strings.Split(in["erase.wrong"], "{")[0])
	if !strings.Contains(server.Export(), "Zwetschgenwind") {
		t.Fatal("erased without the word")
	}
	a.Type(fill(in["forget.type"], "word", in["erase.word"]), "erase")
	a.Tap("button", in["forget.button"])
	a.See(in["forget.doneMet"])
	a.ShotNow("erase-person-done")
	a.forgets("the first phone", secrets...)
	a.NotSee("Quirina")

	c.Online()
	c.setUp()
	c.holds(in["field.rider"], "")
	c.NotSee(fill(in["hint.veiled"], "weight", in["recMass.middle"]))
	c.forgets("the third phone", append(secrets, `"felt":"too_soft"`)...)
	c.NotSee("Quirina")
	gone := func() bool { return len(server.holding(secrets...)) == 0 }
	a.Eventually("the server's folder to hold nothing of them", gone)

	before := len(server.ops(t))
	road.SwitchTo(0)
	b.Online()
	b.Eventually("what the second phone brings", func() bool { return len(server.ops(t)) > before })
	b.See(in["sync.phase.even"])
	b.forgets("the second phone", secrets...)
	b.Eventually("nobody of that name", func() bool { return !strings.Contains(strings.Join(b.options(in["me.who"]), " "), "Quirina") })
	b.Go("pressure")
	b.NotSee("75.31")
	b.Eventually("still nothing", gone)
	server.Stop() // what lies on the disk without a running server
	if found := server.holding(secrets...); len(found) > 0 {
		t.Errorf("the data folder still holds them: %s", fmt.Sprint(found))
	}
	server.Start()
}
