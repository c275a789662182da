package engine

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"
)

// Person uses one page as a person would, by the roles and names that are seen or read out. What does not come fails the test.
type Person struct {
	T   testing.TB
	Tab Tab
}

const (
	waiting  = 40 * time.Second
	interval = 50 * time.Millisecond
)

//go:embed find.js
var find string

// Eval gives the value of an expression, awaited. It is for looking only.
func Eval[T any](p *Person, expression string) (value T) {
	p.T.Helper()
	text, err := p.Tab.Run(expression)
	if err == nil {
		err = json.Unmarshal(text, &value)
	}
	if err != nil {
		p.T.Fatalf("%s: %v", expression, err)
	}
	return value
}

// Until waits until the condition holds.
func (p *Person) Until(what string, condition func() bool) {
	p.T.Helper()
	deadline := time.Now().Add(waiting)
	for !condition() {
		if time.Now().After(deadline) {
			p.T.Fatalf("waited in vain: %s\nthe page says: %s\nconsole: %q", what, p.Text(), p.Tab.Heard())
		}
		time.Sleep(interval)
	}
}

// holds tells whether an expression is true; between two pages nothing is.
func (p *Person) holds(expression string) bool {
	text, err := p.Tab.Run(expression)
	return err == nil && string(text) == "true"
}

// Holds waits until an expression is true.
func (p *Person) Holds(what, expression string) {
	p.T.Helper()
	p.Until(what, func() bool { return p.holds(expression) })
}

// Text is what can be read on the page now, with single spaces.
func (p *Person) Text() string {
	var text string
	said, err := p.Tab.Run(`document.body?.innerText ?? ""`)
	if err != nil || json.Unmarshal(said, &text) != nil {
		return ""
	}
	return strings.Join(strings.Fields(text), " ")
}

// See waits until each of the texts can be read.
func (p *Person) See(texts ...string) {
	p.T.Helper()
	for _, text := range texts {
		p.Until(fmt.Sprintf("to see %q", text), func() bool { return strings.Contains(p.Text(), text) })
	}
}

// NotSee waits until the text can no longer be read.
func (p *Person) NotSee(text string) {
	p.T.Helper()
	p.Until(fmt.Sprintf("to see %q gone", text), func() bool { return !strings.Contains(p.Text(), text) })
}

// Thing is what a person means: a role, or several parted by "|", and a name. Inside narrows it to the group of a name.
type Thing struct {
	Role, Name string
	Begins     bool // the name only begins like this, and the first such thing is meant
	Inside     string
}

// elements is an expression for the elements that are meant.
func (t Thing) elements() string {
	quoted := func(value any) string { text, _ := json.Marshal(value); return string(text) }
	root := "document.body"
	if t.Inside != "" {
		root = fmt.Sprintf(`(%s)("group|radiogroup", %s, false)[0] ?? document.createElement("p")`, find, quoted(t.Inside))
	}
	return fmt.Sprintf("(%s)(%s, %s, %t, %s)", find, quoted(t.Role), quoted(t.Name), t.Begins, root)
}

// with asks something about the one element that is meant, called each; null when there is not just one.
func (t Thing) with(question string) string {
	return fmt.Sprintf(`(async () => {
		const found = %s;
		if (found.length !== 1 && !(%t && found.length > 0)) return null;
		const each = found[0];
		%s
	})()`, t.elements(), t.Begins, question)
}

// There waits until the thing is on the page.
func (p *Person) There(thing Thing) {
	p.T.Helper()
	p.Holds(fmt.Sprintf("%+v to be there", thing), thing.with("return true;"))
}

// free gives the middle of the thing once it lies still and nothing covers it.
const free = `
	if (each.disabled || each.getAttribute("aria-disabled") === "true") return null;
	each.scrollIntoView({block: "nearest", inline: "nearest", behavior: "instant"});
	let box = each.getBoundingClientRect();
	for (let look = 0; look < 4; look++) {
		const before = box;
		await new Promise((resolve) => setTimeout(resolve, 30));
		box = each.getBoundingClientRect();
		if (box.width === 0 || box.top !== before.top || box.left !== before.left) return null;
	}
	const x = box.left + box.width / 2, y = box.top + box.height / 2;
	const hit = document.elementFromPoint(x, y);
	if (hit === null || !each.contains(hit) && !(hit.contains(each) && hit.closest("label") !== null)) {
		const label = each.labels?.[0];
		if (hit === null || label === undefined || !label.contains(hit)) return null;
	}
	return {x, y};`

// Tap presses the thing once it can be pressed.
func (p *Person) Tap(thing Thing) {
	p.T.Helper()
	var place *struct{ X, Y float64 }
	p.Until(fmt.Sprintf("%+v to lie free under the finger", thing), func() bool {
		said, err := p.Tab.Run(thing.with(free))
		return err == nil && json.Unmarshal(said, &place) == nil && place != nil
	})
	if err := p.Tab.Press(place.X, place.Y); err != nil {
		p.T.Fatal(err)
	}
}

// Button presses the button of this name, Link follows the link.
func (p *Person) Button(name string) { p.T.Helper(); p.Tap(Thing{Role: "button", Name: name}) }

// Link follows the link of this name.
func (p *Person) Link(name string) { p.T.Helper(); p.Tap(Thing{Role: "link", Name: name}) }

// field is what is typed into.
func field(label string) Thing { return Thing{Role: "field", Name: label} }

// Type puts text into the field with this label, in place of what stands there.
func (p *Person) Type(label, text string) {
	p.T.Helper()
	p.Tap(field(label))
	p.Holds(label+" to have the focus", field(label).with("if (document.activeElement !== each) return false; each.select(); return true;"))
	if err := p.Tab.Keys(text); err != nil {
		p.T.Fatal(err)
	}
	p.Holding(label, text)
}

// Holding waits until the field shows this value.
func (p *Person) Holding(label, value string) {
	p.T.Helper()
	p.Holds(fmt.Sprintf("%q to hold %q", label, value), field(label).with(fmt.Sprintf("return each.value === %q;", value)))
}

// Choose presses one of several in the group of this label, or chooses a line of a list; the browser's own list cannot be
// pressed from outside.
func (p *Person) Choose(label, option string) {
	p.T.Helper()
	radio, list := Thing{Role: "radio", Name: option, Inside: label}, Thing{Role: "combobox", Name: label}
	chooses := list.with(fmt.Sprintf(`
		const wanted = [...each.options].find((line) => line.label === %q && !line.disabled);
		if (wanted === undefined) return false;
		each.focus();
		each.value = wanted.value;
		for (const type of ["input", "change"]) each.dispatchEvent(new Event(type, {bubbles: true}));
		return true;`, option))
	done := false
	p.Until(fmt.Sprintf("%q to offer %q", label, option), func() bool {
		done = p.holds(chooses)
		return done || p.holds(radio.with("return true;"))
	})
	if !done {
		p.Tap(radio)
	}
}

// Day sets a date field as the browser's own calendar would.
func (p *Person) Day(label, day string) {
	p.T.Helper()
	p.Holds("the field "+label, field(label).with(fmt.Sprintf(`each.value = %q; each.dispatchEvent(new Event("input", {bubbles: true})); return true;`, day)))
}

// Bring gives a file to the chooser with this label.
func (p *Person) Bring(label, path string) {
	p.T.Helper()
	p.Holds("the chooser "+label, Thing{Role: "button", Name: label}.with(`each.dataset.chosen = ""; return true;`))
	if err := p.Tab.Bring("[data-chosen]", path); err != nil {
		p.T.Fatal(err)
	}
	p.Tab.Run(`delete document.querySelector("[data-chosen]")?.dataset.chosen`)
}

// Go follows the address to a screen, as a bookmark would.
func (p *Person) Go(screen string) {
	p.T.Helper()
	Eval[string](p, fmt.Sprintf("location.hash = '#/%s'", screen))
}

// Reload loads the page anew.
func (p *Person) Reload() {
	p.T.Helper()
	if err := p.Tab.Reload(); err != nil {
		p.T.Fatal(err)
	}
}
