package journey

import (
	"encoding/json"
	"fmt"

	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

const fields = "textbox|spinbutton|searchbox|combobox"

// Tap presses what has this role and name: with a finger on a phone, with the mouse at a desk. What is covered by
// something else cannot be pressed.
func (p *Page) Tap(role, name string) {
	p.t.Helper()
	p.press(role, name, func() Node { return p.Find(role, name) })
}

func (p *Page) tap(node Node) {
	p.t.Helper()
	p.press(node.Role, node.Name, func() Node { return node })
}

// press looks for its target anew until it can be pressed: one of two alike may just be going.
func (p *Page) press(role, name string, find func() Node) {
	p.t.Helper()
	var x, y float64
	p.Eventually(fmt.Sprintf("%s %q to lie free under the finger", role, name), func() bool {
		node := find()
		if node.Properties["disabled"] == "true" {
			p.t.Fatalf("%s %q is disabled", node.Role, node.Name)
		}
		var placed bool
		if x, y, placed = p.point(node); !placed {
			return false
		}
		return callOn[bool](p, node, fmt.Sprintf(`function() {
			const hit = document.elementFromPoint(%f, %f);
			const host = this.nodeType === 1 ? this : this.parentElement;
			return hit !== null && (host.contains(hit) || hit.contains(host) && hit.closest("label") !== null);
		}`, x, y))
	})
	p.taps++
	if p.touch {
		p.do(chromedp.TapXY(x, y))
	} else {
		p.do(chromedp.MouseClickXY(x, y))
	}
}

// point scrolls a node into view and gives its middle; placed is false for what is not shown.
func (p *Page) point(node Node) (x, y float64, placed bool) {
	p.t.Helper()
	callOn[bool](p, node, `function() {
		const host = this.nodeType === 1 ? this : this.parentElement;
		host.scrollIntoView({block: "nearest", inline: "nearest", behavior: "instant"});
		return true;
	}`)
	quads, err := chromedp.Call(p.ctx, dom.GetContentQuads, dom.GetContentQuadsParams{BackendNodeID: node.backend})
	if err != nil || len(quads.Quads) == 0 {
		return 0, 0, false
	}
	q := quads.Quads[0]
	return (q[0] + q[2] + q[4] + q[6]) / 4, (q[1] + q[3] + q[5] + q[7]) / 4, true
}

// Type puts text into the field with this label, in place of what stands there.
func (p *Page) Type(label, text string) {
	p.t.Helper()
	node := p.Find(fields, label)
	p.tap(node)
	callOn[bool](p, node, "function() { this.select(); return true; }")
	if text == "" {
		text = kb.Backspace
	}
	p.do(chromedp.KeyEvent(text))
}

// Value is what stands in the field with this label.
func (p *Page) Value(label string) string {
	p.t.Helper()
	return callOn[string](p, p.Find(fields, label), "function() { return this.value; }")
}

// Choose picks one of several: a radio button within the group of this label, or a line of a list.
func (p *Page) Choose(label, option string) {
	p.t.Helper()
	lists := p.matching("combobox", label)
	if len(lists) == 1 {
		p.pick(lists[0], option)
		return
	}
	group := p.Find("group|radiogroup", label)
	nodes := p.Tree()
	for _, node := range nodes {
		if node.Role == "radio" && node.Name == option && within(nodes, node, group) {
			p.tap(node)
			return
		}
	}
	p.t.Fatalf("%q offers no %q", label, option)
}

// pick chooses a line of a native list; the browser's own list cannot be pressed without a screen.
func (p *Page) pick(list Node, option string) {
	p.t.Helper()
	found := callOn[bool](p, list, fmt.Sprintf(`function() {
		const wanted = [...this.options].find((each) => each.label === %q && !each.disabled);
		if (wanted === undefined) return false;
		this.focus();
		this.value = wanted.value;
		this.dispatchEvent(new Event("input", {bubbles: true}));
		this.dispatchEvent(new Event("change", {bubbles: true}));
		return true;
	}`, option))
	if !found {
		p.t.Fatalf("%q offers no %q", list.Name, option)
	}
	p.taps += 2
}

// Key presses a key, such as kb.Tab, with modifiers held.
func (p *Page) Key(key string, held ...chromedp.Modifier) {
	p.t.Helper()
	p.do(chromedp.KeyEvent(key, chromedp.KeyModifiers(held...)))
}

// Focused is what the keyboard speaks to.
func (p *Page) Focused() Node {
	p.t.Helper()
	var focused Node
	for _, node := range p.Tree() {
		if node.Properties["focused"] == "true" {
			focused = node // the innermost stands last
		}
	}
	return focused
}

// callOn calls a function with the node as this.
func callOn[T any](p *Page, node Node, function string) T {
	p.t.Helper()
	var value T
	object, err := chromedp.Call(p.ctx, dom.ResolveNode, dom.ResolveNodeParams{BackendNodeID: node.backend})
	if err != nil {
		p.t.Fatalf("%s %q: %v", node.Role, node.Name, err)
	}
	byValue := true
	result, err := chromedp.Call(p.ctx, runtime.CallFunctionOn, runtime.CallFunctionOnParams{
		FunctionDeclaration: function, ObjectID: object.Object.ObjectID, ReturnByValue: &byValue,
	})
	if err != nil {
		p.t.Fatalf("%s %q: %v", node.Role, node.Name, err)
	}
	if result.ExceptionDetails != nil {
		p.t.Fatalf("%s %q: %s", node.Role, node.Name, result.ExceptionDetails.Text)
	}
	if err := json.Unmarshal(result.Result.Value, &value); err != nil {
		p.t.Fatal(err)
	}
	return value
}
