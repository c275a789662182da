package journey

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"rimside/pwa/journey/engine"
)

// One way through the app, in every engine: all of it with the server stopped after the first visit, then two phones that share
// a book.
func TestTour(t *testing.T) {
	if os.Getenv("RIMSIDE_TOUR") == "" {
		t.Skip("set RIMSIDE_TOUR=1 to drive WebKit and Gecko: the tour is young, and was not yet run often enough to be part of every run")
	}
	for _, each := range engines {
		t.Run(each.name, func(t *testing.T) {
			nextVersion(t) // not while a browser waits
			server := StartServer(t)
			r := newRider(t, each.start, false)
			t.Log(r.browser.Name())
			r.open(server.URL())
			r.kept()
			server.Stop()
			r.coldReopen(server.URL())
			r.See(r.in["first.intro"])
			r.past("cold start")
			r.pressure()
			r.walk()
			r.trip()
			r.stored()

			r.update(server)
			server.Stop()
			server.Start("-login")
			r.pairs(server)
			other := newRider(t, each.start, true)
			other.open(server.URL() + "#/settings/phones")
			r.share(other)
			r.german()
			r.spare()
		})
	}
}

// kept waits until the app can be opened without the server.
func (r *rider) kept() {
	r.t.Helper()
	r.Holds("the app to be kept for use without signal", "navigator.serviceWorker.controller !== null")
	r.past("first visit")
}

// allSaved waits until nothing is on its way to the disk.
func (r *rider) allSaved() {
	r.t.Helper()
	r.Holds("the status line to rest", fmt.Sprintf(`(() => {
		const said = document.querySelector("rs-status:not([aria-busy])")?.innerText ?? "";
		return said.includes(%q) || said.includes(%q);
	})()`, r.in["status.saved"], news))
}

// shows waits until a wheel's card says a text.
func (r *rider) shows(side, text string) {
	r.t.Helper()
	r.Holds(side+" to say "+text, fmt.Sprintf("(%s).includes(%q)", card(side), text))
}

func card(side string) string {
	return fmt.Sprintf(`[...document.querySelectorAll("h2")].find((each) => each.textContent === %q && each.checkVisibility())?.closest("section")?.innerText ?? ""`, side)
}

// settles gives the number of a wheel once it stays the same.
func (r *rider) settles(side string) string {
	r.t.Helper()
	var now string
	r.Until("the number of "+side+" to rest", func() bool {
		before := now
		now = bigNumber.FindString(engine.Eval[string](&r.Person, card(side)))
		time.Sleep(200 * time.Millisecond) // the last key's answer
		return now != "" && now == before
	})
	return now
}

// pressure answers the first questions, and goes from the number to what is noted of both wheels.
func (r *rider) pressure() {
	r.t.Helper()
	in := r.in
	front := in["side.front"]
	r.Type(in["field.rider"], "72")
	r.Type(in["field.bike"], "11")
	r.Type(in["field.label"], "50")
	r.Choose(in["pick.setup"], in["setup.tubeless"])
	r.Choose(in["pick.profile"], in["profile.hooked"])
	r.Choose(in["part.ground"], in["kind.pea"])
	r.Button(in["first.go"])
	smooth := r.settles(front)
	r.past("pressure")
	r.Tap(engine.Thing{Role: "button", Name: in["part.ground"], Begins: true})
	r.Choose("Stretch 1: "+in["ground.what"], in["kind.egg"])
	r.Button(in["sheet.done"])
	if rough := r.settles(front); rough == smooth {
		r.t.Errorf("on other ground the front still shows %s", rough)
	}
	r.Type(in["field.now.front"], "2,90")
	r.shows(front, "Let out")
	r.past("reading")
	r.Button(in["sheet.done"])
	r.Button(in["set.both"])
	r.See(in["set.done"])
	r.allSaved()
	stood := r.settles(front)
	r.Reload()
	if now := r.settles(front); now != stood {
		r.t.Errorf("after a reload the front shows %s, not %s", now, stood)
	}
	r.past("set")
}

// walk looks the bike over, with a finding and its photo at the first row.
func (r *rider) walk() {
	r.t.Helper()
	in := r.in
	r.Link(in["place.checks"])
	r.Tap(engine.Thing{Role: "link", Name: in["checks.moment.start"], Begins: true})
	r.Tap(engine.Thing{Role: "button", Name: strings.Split(in["checks.findOf"], "{")[0], Begins: true})
	r.Choose(in["checks.severity"], in["checks.bad.stop"])
	r.Type(in["checks.words"], "cord shows")
	photo := filepath.Join(r.t.TempDir(), "large.jpg")
	if err := os.WriteFile(photo, []byte(photoWithPlace(r.t)), 0o600); err != nil {
		r.t.Fatal(err)
	}
	r.Bring(in["checks.photo"], photo)
	r.Holds("the photo, made small", `document.querySelector("rs-photo-item img")?.naturalWidth === 1600`)
	r.past("finding")
	r.Button(in["checks.foundDone"])
	for _, station := range stations {
		r.Button(fill(in["checks.okOf"], "station", in["checks.station."+station]))
	}
	r.There(engine.Thing{Role: "heading", Name: in["ready.state.stop"]})
	r.Button(in["checks.finish"])
	r.See("cord shows")
	r.past("checks")
}

// trip plans a flight and ticks its first steps.
func (r *rider) trip() {
	r.t.Helper()
	in := r.in
	day := func(days int) string { return time.Now().AddDate(0, 0, days).Format("2006-01-02") }
	r.Link(in["place.packing"])
	r.Go("packing/new")
	r.Type(in["recField.name"], "Island")
	r.Day(in["recField.from"], day(1))
	r.Day(in["recField.arrives"], day(2))
	r.Day(in["recField.to"], day(7))
	r.Choose(in["recField.way"], in["recOption.air_bag"])
	r.Button(in["trip.add"])
	r.There(engine.Thing{Role: "heading", Name: "Island"})
	const step = `(document.querySelector("rs-next h3")?.textContent ?? "")`
	r.Holds("a first step", step+` !== ""`)
	for range 2 {
		now := engine.Eval[string](&r.Person, step)
		r.Button(in["trip.done"])
		r.Holds("the step after "+now, fmt.Sprintf("%s !== %q", step, now))
	}
	now := engine.Eval[string](&r.Person, step)
	r.allSaved()
	r.Reload()
	r.Holds("the same step after a reload", fmt.Sprintf("%s === %q", step, now))
	r.past("packing")
}

// stored asks the browser to keep what is stored, and waits for what it answers: engines differ in that.
func (r *rider) stored() {
	r.t.Helper()
	in := r.in
	r.Go("settings")
	r.See(in["storage.title"])
	answers := []string{in["storage.state.kept"], in["storage.state.evictable"], in["storage.state.unknown"]}
	said := r.oneOf(answers...)
	if said == in["storage.state.evictable"] {
		r.Button(in["storage.ask"])
		said = r.oneOf(in["storage.refused"], in["storage.state.kept"], in["storage.pending"])
	}
	r.past("settings")
	r.t.Logf("asked to keep what is stored: %s", said)
}

// oneOf waits for one of some texts, and gives it.
func (r *rider) oneOf(texts ...string) (found string) {
	r.t.Helper()
	r.Until(fmt.Sprintf("one of %q", texts), func() bool {
		said := r.Text()
		for _, text := range texts {
			if strings.Contains(said, text) {
				found = text
			}
		}
		return found != ""
	})
	return found
}

// spare gives a spare out of a team's car, with no signal.
func (r *rider) spare() {
	r.t.Helper()
	in := r.in
	server := StartServer(r.t, "-demo")
	r.open(server.URL() + "#/car")
	r.See(in["car.typeNumber"])
	r.kept()
	server.Stop()
	for _, digit := range "114" {
		r.Button(string(digit))
	}
	r.See("GIVE REAR 3")
	r.past("team car")
	r.Button(fill(in["car.gaveSpoken"], "spare", "Rear 3", "who", "114 · Rider in fern"))
	r.See(fill(in["car.gaveDone"], "spare", "Rear 3", "who", "114 · Rider in fern"))
	r.allSaved()
	r.Reload()
	r.Link(in["lent.title"])
	r.See("Rear 3 is with 114 · Rider in fern")
	r.past("spares out")
}

// update takes a new version, that waits until it is asked for and keeps what is half typed.
func (r *rider) update(server *Server) {
	r.t.Helper()
	in := r.in
	server.Replace(nextVersion(r.t))
	r.Go("pressure")
	r.See("cord shows") // the last to come, above the cards
	r.settles(in["side.front"])
	r.Type(in["field.now.front"], "about 2")
	// The app looks by itself when it comes back to the front and every hour; here it is told to.
	engine.Eval[bool](&r.Person, "navigator.serviceWorker.getRegistration().then((found) => found.update()).then(() => true)")
	r.See(in["offer.text"])
	r.allSaved()
	r.past("update offered")
	r.Button(in["offer.reload"])
	r.See(news)
	r.Holding(in["field.now.front"], "about 2")
	r.past("updated")
}

// pairs lets the phone in with a code of the server's own computer; what was done without signal goes out.
func (r *rider) pairs(server *Server) {
	r.t.Helper()
	in := r.in
	r.Go("settings/phones")
	r.Type(in["pair.code"], server.pairingCode())
	r.Type(in["pair.label"], "First phone")
	r.Button(in["pair.title"])
	r.See(in["pair.done"])
	r.Until("the walk on the server", func() bool { return strings.Contains(server.kept(), "cord shows") })
	r.past("paired")
}

var sixDigits = regexp.MustCompile(`\b\d{3} \d{3}\b`)

// share lets another phone in with a code of this one, which then shows what this one found.
func (r *rider) share(other *rider) {
	r.t.Helper()
	in := r.in
	r.Button(in["code.make"])
	var code string
	r.Until("a code", func() bool {
		code = sixDigits.FindString(engine.Eval[string](&r.Person, `document.querySelector(".figures")?.innerText ?? ""`))
		return code != ""
	})
	other.Type(in["pair.code"], code)
	other.Type(in["pair.label"], "Second phone")
	engine.Eval[bool](&other.Person, "globalThis.alone = true")
	other.Button(in["pair.title"])
	other.Holds("the team's book, with which the page loads anew", `globalThis.alone === undefined && document.readyState === "complete"`)
	other.See("First phone")
	other.Go("checks")
	other.See("cord shows")
	other.past("second phone")
	other.Go("settings")
	other.See(in["sync.phase.even"])
	other.Go("pressure")
	other.past("second phone pressure")
}

// german makes the app speak German, with letters twice as large.
func (r *rider) german() {
	r.t.Helper()
	r.Go("settings")
	r.Choose(r.in["settings.language"], r.in["settings.language.de"])
	de := wordsIn(r.t, "de")
	r.See(de["place.settings"])
	r.Go("pressure")
	r.There(engine.Thing{Role: "button", Name: de["set.both"]})
	engine.Eval[string](&r.Person, `document.documentElement.style.fontSize = "200%"`)
	if over := engine.Eval[float64](&r.Person, `document.documentElement.scrollWidth - document.documentElement.clientWidth`); over > 0 {
		r.t.Errorf("with letters twice as large the page is %.0f px too wide", over)
	}
	r.past("German, large")
}
