package journey

import (
	"strings"
	"testing"
	"time"
)

// What is due is told with its reason, noted when it is done, taken back, and handed over as reminders.
func TestWhatIsDue(t *testing.T) {
	server := TeamServer(StartServer(t), builds[0].deeds()...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL()+"#/checks/due/"+hexOf("Ochre"), keepDownloads)
	p.Find("heading", in["due.heading"]+" · Ochre")
	p.See("9 never noted")
	p.unfold("9 never noted")
	done := p.firstButton(in["due.done"] + ":")
	title := strings.TrimPrefix(done.Name, in["due.done"]+": ")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("what is due at " + size.Name)
	})
	p.Shot("checks-due")
	p.tap(done)
	p.See(fill(in["due.noted"], "title", title))
	p.Tap("button", in["ground.undo"])
	p.See(in["things.undone"])
	p.unfold(in["due.intervals"])
	p.Type(in["due.interval.bolts_days"], "0")
	p.See("From 1 to 3650 days.")
	p.Type(in["due.interval.bolts_days"], "400")
	p.onServer(server, `"bolts_days":400`)

	p.Tap("button", in["due.calendar"])
	p.Eventually("a calendar file", func() bool { return Eval[bool](p, `globalThis.kept !== undefined`) })
	text := Eval[string](p, `globalThis.kept.text()`)
	events := readCalendar(t, text)
	if len(events) < 2 {
		t.Fatalf("the file has %d reminders:\n%s", len(events), text)
	}
	today := time.Now().Format("20060102")
	for _, each := range events {
		if each.uid == "" || !strings.HasPrefix(each.summary, "Ochre: ") || each.start < today || !each.alarm {
			t.Errorf("a reminder lacks something: %+v", each)
		}
	}
}

// An indoor wheel: rides are noted, the index rises, a wipe hardly helps, a wash does.
func TestSweatSinceTheLastWash(t *testing.T) {
	p, _ := atChecks(t, builds[0])
	in := words(t)
	p.Go("checks/sweat/" + hexOf("Ochre"))
	p.Find("heading", in["salt.title"]+" · Ochre")
	p.See("Rim and nipples: aluminium against carbon")
	p.Tap("button", in["salt.add"])
	p.See(in["fault.missing"])
	for range 3 {
		p.Type(in["recField.hours"], "4")
		p.Choose(in["salt.sweat"], in["salt.sweatLevel.high"])
		p.Tap("button", in["salt.add"])
		p.Eventually("the ride to be noted", func() bool { return p.Value(in["recField.hours"]) == "" })
	}
	due := strings.Split(in["salt.due"], " {")[0]
	p.See(due)
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("sweat at " + size.Name)
	})
	p.Shot("checks-sweat")
	p.Tap("button", in["salt.wiped"])
	p.See(in["salt.noted"])
	p.See(due)
	p.Tap("button", in["salt.washed"])
	p.See(in["salt.notDue"])
	p.Tap("button", in["ground.undo"])
	p.See(due)
	p.Go("checks/rotor")
	p.Find("heading", in["rotor.head.squeal"])
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("rotor care at " + size.Name)
	})
	p.Shot("checks-rotor")
}

// What an evening's walk-around looked at is looked at: it leaves the list of what nobody noted, and the walk itself is not due.
func TestAnEveningWalkAnswersWhatIsDue(t *testing.T) {
	p, _ := atChecks(t, builds[0])
	in := words(t)
	p.Go("checks/due/" + hexOf("Ochre"))
	p.See("9 never noted")
	p.See(in["due.now"])
	p.Go("checks")
	p.tap(p.link(in["checks.short.evening"]))
	p.atEachStation(nil)
	p.Tap("button", in["checks.finish"])
	p.Find("heading", in["place.checks"]+" · Ochre")
	p.Go("checks/due/" + hexOf("Ochre"))
	p.See("4 never noted") // sealant and rotors are measured, not looked at
	p.NotSee("9 never noted")
	p.See("every 30 days") // the walk itself, from today
	p.See(in["due.title.pads_front"])
	p.See("every 60 days")
}
