package journey

import (
	"strings"
	"testing"
	"time"
)

// At the start line, no signal: one tap opens the app, and what to do to each tyre stands there, from what was set at
// home, what the tyre loses, and the air of here. A reading is the second tap.
func TestFromAColdStartToTheAction(t *testing.T) {
	in := words(t)
	front := in["side.front"]
	server := StartServer(t)
	browser := OpenBrowser(t)
	p := browser.Open(server.URL())
	p.installed()
	p.firstAnswers()
	p.air()
	p.weather(in, "20", "200")
	p.edit(in["field.ride.c"], "8")
	p.edit(in["field.ride.m"], "1100")
	p.shut()
	p.Tap("button", in["set.both"])
	p.See(in["set.done"])
	p.says(front, in["act.unread"]) // set at home, the screen stands at the start: twelve degrees colder, nine hundred metres higher
	p.says(front, in["act.leave"])
	p.Axe()
	p.tap(p.Find(fields, in["field.now.front"]))
	p.See("12 °C colder")
	p.See("900 m higher")
	p.See(in["expect.noLeak"])
	p.Eventually("an action in words", func() bool {
		return strings.Contains(p.card(front), "Add") || strings.Contains(p.card(front), "Let out") || strings.Contains(p.card(front), in["act.leave"])
	})
	p.saved("pressure-answer")

	p.Allow(offline)
	server.Stop()
	browser.Kill()
	browser.Restart()
	again := browser.Open(server.URL())
	again.Allow(offline)
	again.Eventually("the action at a cold start", func() bool { return strings.Contains(again.card(front), "not read") })
	should := again.number(front)
	label := in["field.now.front"]
	again.Type(label, should)
	again.says(front, in["act.leave"])
	again.says(front, "you read "+should)
	again.Type(label, "2.90")
	again.says(front, "Let out")
	again.See(in["expect.sun"])
	again.Type(label, "2,90 bar")
	again.says(front, "Let out")
	again.Type(label, "42 psi")
	again.says(front, "Let out")
	again.Type(label, "abc")
	again.says(front, in["act.readAgain"])
	again.Axe()
	again.EachLook(func(size Size, _ string) { again.wide("readings at " + size.Name) })
	again.Shot("two-taps")
}

// weather types what it is where the tyres are set, and gives the front's number once it has settled.
func (p *Page) weather(in map[string]string, celsius, metres string) string {
	p.t.Helper()
	p.edit(in["field.set.c"], celsius)
	p.edit(in["field.set.m"], metres)
	time.Sleep(300 * time.Millisecond) // the last key's answer
	return p.number(in["side.front"])
}
