package due_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/check"
	"rimside/calc/due"
	"rimside/calc/salt"
	"rimside/calc/unit"
)

var (
	disc = check.Wheel{Setup: "tubeless", Profile: "hooked", Rim: "aluminium", Nipple: "brass", Spoke: "stainless", Hub: "aluminium", Brake: "disc"}
	tube = check.Wheel{Setup: "tube", Profile: "hooked", Rim: "aluminium", Nipple: "brass", Spoke: "stainless", Hub: "aluminium", Brake: "rim"}
)

func bikeOf(w check.Wheel) due.Bike {
	return due.Bike{Bike: check.Bike{Front: w, Rear: w}, FrontBearing: salt.Steel, RearBearing: salt.Steel}
}

func event(day int, kind string) due.Event {
	return due.Event{Event: check.Event{Day: unit.Day(day), Kind: kind}}
}

func looked(day int, moment string) due.Event {
	e := event(day, "check")
	e.Moment = moment
	return e
}

func rode(day int, conditions string, hours, km float64) due.Event {
	e := event(day, "ride")
	e.Conditions, e.Hours, e.KM = conditions, hours, km
	return e
}

func measured(day int, kind, side string, mm float64) due.Event {
	e := event(day, kind)
	e.Side, e.MM = side, mm
	return e
}

func on(bike due.Bike, today int, history ...due.Event) []due.Item {
	return due.List(bike, history, unit.Day(today), due.Usual(), false)
}

func find(list []due.Item, id string) (due.Item, bool) {
	i := slices.IndexFunc(list, func(item due.Item) bool { return item.ID == id })
	if i < 0 {
		return due.Item{}, false
	}
	return list[i], true
}

// Each row: what was noted, and when a thing is due on day 100; -1 is not in the list.
func TestWhenThingsAreDue(t *testing.T) {
	fresh := measured(50, "pads", "front", 0)
	fresh.New = true
	for name, c := range map[string]struct {
		wheel   check.Wheel
		id      string
		history []due.Event
		due     unit.Day
	}{
		"sealant, date not known":              {disc, "sealant_front", nil, 100},
		"sealant, two months":                  {disc, "sealant_front", []due.Event{event(10, "sealant")}, 70},
		"sealant, the other wheel":             {disc, "sealant_rear", []due.Event{measured(10, "sealant", "front", 0)}, 100},
		"sealant, the later one":               {disc, "sealant_rear", []due.Event{event(90, "sealant"), event(10, "sealant")}, 150},
		"sealant, noted ahead of today":        {disc, "sealant_rear", []due.Event{event(10, "sealant"), event(101, "sealant")}, 70},
		"no sealant in a tube":                 {tube, "sealant_front", nil, -1},
		"sealant where the setup is not known": {check.Wheel{}, "sealant_front", nil, 100},
		"rotor, never measured":                {disc, "rotor_rear", nil, 100},
		"rotor, measured well":                 {disc, "rotor_rear", []due.Event{measured(40, "rotor", "rear", 1.7)}, 130},
		"rotor, 1.54 mm without a mark":        {disc, "rotor_rear", []due.Event{measured(40, "rotor", "rear", 1.54)}, 40},
		"rotor, then looked at only":           {disc, "rotor_rear", []due.Event{measured(40, "rotor", "rear", 1.54), event(60, "rotor")}, 40},
		"no rotor at a rim brake":              {tube, "rotor_rear", nil, -1},
		"pads, to replace before an event":     {disc, "pads_front", []due.Event{measured(40, "pads", "front", 1.5)}, 40},
		"pads, new since":                      {disc, "pads_front", []due.Event{measured(40, "pads", "front", 0.4), fresh}, 110},
		"pads, enough":                         {disc, "pads_front", []due.Event{measured(40, "pads", "front", 1.6)}, 100},
		"no disc pads at a rim brake":          {tube, "pads_front", nil, -1},
		"spokes, nothing known":                {tube, "spokes_rear", nil, 100},
		"spokes, 100 km after building":        {tube, "spokes_rear", []due.Event{event(10, "built"), rode(9, "dry", 1, 90), rode(11, "dry", 1, 60), rode(12, "dry", 1, 40)}, 12},
		"spokes, 99 km after building":         {tube, "spokes_rear", []due.Event{event(10, "built"), rode(12, "dry", 1, 99)}, 375},
		"spokes, checked after building":       {tube, "spokes_rear", []due.Event{event(10, "built"), rode(12, "dry", 1, 200), event(13, "spokes")}, 378},
		"spokes, rebuilt after a check":        {tube, "spokes_rear", []due.Event{event(5, "spokes"), event(10, "built"), rode(12, "dry", 1, 200)}, 12},
		"bolts, never":                         {tube, "bolts", nil, 100},
		"bolts, checked":                       {tube, "bolts", []due.Event{event(30, "bolts")}, 120},
		"bolts, carried since":                 {tube, "bolts", []due.Event{event(30, "bolts"), event(80, "transport")}, 80},
		"walk-around, never":                   {tube, "walk_around", []due.Event{looked(99, "start")}, 100},
		"walk-around, of an evening":           {tube, "walk_around", []due.Event{looked(60, "evening")}, 90},
		"crash, unanswered":                    {tube, "crash_check", []due.Event{looked(60, "crash"), event(70, "crash"), looked(71, "evening")}, 70},
		"crash, answered":                      {tube, "crash_check", []due.Event{event(70, "crash"), looked(71, "crash")}, -1},
		"no crash":                             {tube, "crash_check", nil, -1},
		"journey, unanswered":                  {tube, "arrival_check", []due.Event{event(70, "transport")}, 70},
		"journey, answered in the evening":     {tube, "arrival_check", []due.Event{event(70, "transport"), looked(70, "evening")}, -1},
		"pads, measured well since":            {disc, "pads_front", []due.Event{measured(40, "pads", "front", 0.4), measured(60, "pads", "front", 2)}, 120},
		"journey, answered":                    {tube, "arrival_check", []due.Event{event(70, "transport"), looked(70, "arrival")}, -1},
		"width, nobody noted the fitting":      {disc, "width_front", []due.Event{event(10, "width")}, -1},
		"width, fitted and not measured":       {tube, "width_front", []due.Event{event(10, "fitted")}, 10},
		"width, measured before the fitting":   {disc, "width_front", []due.Event{event(10, "fitted"), event(9, "width")}, 10},
		"width, measured the same day":         {disc, "width_rear", []due.Event{event(10, "fitted"), event(10, "width")}, 17},
		"width, measured once it had grown":    {disc, "width_rear", []due.Event{event(10, "fitted"), event(10, "width"), event(17, "width")}, -1},
		"width, the other wheel's":             {disc, "width_rear", []due.Event{measured(10, "fitted", "front", 0)}, -1},
		"wash, after salt":                     {disc, "wash", []due.Event{rode(95, "salted", 3, 60)}, 95},
		"wash, washed since":                   {disc, "wash", []due.Event{rode(95, "salted", 3, 60), event(96, "wash")}, -1},
		"wash, only wiped since":               {disc, "wash", []due.Event{rode(95, "salted", 3, 60), event(96, "wipe")}, 95},
		"wash, dry rides":                      {disc, "wash", []due.Event{rode(95, "dry", 50, 900)}, -1},
		"wash, a ride of unknown conditions":   {disc, "wash", []due.Event{rode(95, "", 50, 900)}, 95},
	} {
		list := on(bikeOf(c.wheel), 100, c.history...)
		item, listed := find(list, c.id)
		if c.due < 0 {
			if listed {
				t.Errorf("%s: %+v", name, item)
			}
			continue
		}
		if !listed || item.Due != c.due || item.OverdueDays != 100-int(c.due) {
			t.Errorf("%s: listed %v, due %d, %d over; want %d", name, listed, item.Due, item.OverdueDays, c.due)
		}
		if !slices.Contains(due.Codes(), string(item.Why.Code)) || !slices.Contains(due.Sources(), string(item.Source)) {
			t.Errorf("%s: %+v", name, item)
		}
	}
}

// The strictest of the two wheels decides on the wash.
func TestWashGoesByTheWeakerWheel(t *testing.T) {
	bike := bikeOf(disc)
	rides := []due.Event{rode(90, "salted", 1.5, 30)}
	if item, listed := find(on(bike, 100, rides...), "wash"); listed {
		t.Errorf("%+v", item)
	}
	bike.Rear.Rim, bike.Rear.Nipple = "carbon", "aluminium"
	if item, listed := find(on(bike, 100, rides...), "wash"); !listed || item.Why.Salt.Cathode != salt.Carbon {
		t.Errorf("listed %v: %+v", listed, item.Why)
	}
	// Both due: the earlier day counts.
	if item, _ := find(on(bike, 100, append(rides, rode(95, "salted", 1.5, 30))...), "wash"); item.Due != 90 {
		t.Errorf("both wheels due, and the wash on %d", item.Due)
	}
}

// The number on the rotor wins, and every interval may be edited; heat asks for sealant sooner.
func TestMarksAndIntervals(t *testing.T) {
	bike := bikeOf(disc)
	bike.Rear.RotorMin = 1.50
	if item, _ := find(on(bike, 100, measured(40, "rotor", "rear", 1.54)), "rotor_rear"); item.Due != 130 {
		t.Errorf("a rotor marked 1.50 is due on %d", item.Due)
	}
	history := []due.Event{event(10, "sealant"), event(10, "rotor"), event(10, "pads"), event(10, "spokes"), event(10, "bolts"), looked(10, "evening")}
	every := due.Intervals{Sealant: 1, SealantHot: 2, Rotor: 3, Pads: 4, Spokes: 5, Bolts: 6, Look: 7, NewSpokesKM: 8}
	for id, want := range map[string]unit.Day{"sealant_front": 11, "rotor_front": 13, "pads_front": 14, "spokes_front": 15, "bolts": 16, "walk_around": 17} {
		if item, _ := find(due.List(bike, history, 100, every, false), id); item.Due != want {
			t.Errorf("%s is due on %d, want %d", id, item.Due, want)
		}
	}
	if item, _ := find(due.List(bike, history, 100, every, true), "sealant_rear"); item.Due != 12 {
		t.Errorf("sealant in heat is due on %d", item.Due)
	}
	if item, _ := find(due.List(bike, history, 100, due.Usual(), true), "sealant_rear"); item.Due != 40 {
		t.Errorf("sealant in heat is usually due on %d", item.Due)
	}
}

func drawHistory(t *rapid.T) []due.Event {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) due.Event {
		e := event(rapid.IntRange(0, 120).Draw(t, "day"), rapid.SampledFrom(check.Events()).Draw(t, "kind"))
		e.Side = rapid.SampledFrom([]string{"", "front", "rear"}).Draw(t, "side")
		e.Moment = rapid.SampledFrom(check.Moments()).Draw(t, "moment")
		e.Conditions = rapid.SampledFrom([]string{"", "indoor", "wet", "salted", "dry"}).Draw(t, "conditions")
		e.Hours, e.KM = rapid.Float64Range(0, 9).Draw(t, "hours"), rapid.Float64Range(0, 200).Draw(t, "km")
		e.MM, e.New = rapid.SampledFrom([]float64{0, 0.4, 1.2, 1.54, 2}).Draw(t, "mm"), rapid.Bool().Draw(t, "new")
		return e
	}), 0, 20).Draw(t, "history")
}

// A stop and an unanswered crash first, then the most overdue; what is due is counted from today; each thing stands once; what is
// noted for later days changes nothing today.
func TestListIsSortedAndSteady(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		history := drawHistory(t)
		list := on(bikeOf(disc), 100, history...)
		ids := map[string]bool{}
		for i, item := range list {
			urgent := item.Why.Severity == check.Stop || item.Why.Code == due.AfterCrash
			if i > 0 && urgent && !(list[i-1].Why.Severity == check.Stop || list[i-1].Why.Code == due.AfterCrash) {
				t.Fatalf("%s stands after %s", item.ID, list[i-1].ID)
			}
			if i > 0 && list[i-1].OverdueDays < item.OverdueDays && (urgent || list[i-1].Why.Severity != check.Stop && list[i-1].Why.Code != due.AfterCrash) {
				t.Fatalf("%s stands before %s", list[i-1].ID, item.ID)
			}
			if item.OverdueDays != 100-int(item.Due) || ids[item.ID] {
				t.Fatalf("%+v", item)
			}
			ids[item.ID] = true
		}
		var past []due.Event
		for _, e := range history {
			if e.Day <= 100 {
				past = append(past, e)
			}
		}
		if !slices.Equal(list, on(bikeOf(disc), 100, past...)) {
			t.Fatal("later days changed today’s list")
		}
	})
}

// A wheel whose place another takes indoors has nothing of the sweat; of the road it has all.
func TestAWheelThatIsSparedTheTrainer(t *testing.T) {
	spared := disc
	spared.Spared = true
	indoors, salted := rode(95, "indoor", 40, 0), rode(96, "salted", 3, 60)
	if item, listed := find(on(bikeOf(spared), 100, indoors), "wash"); listed {
		t.Errorf("both spared: %+v", item)
	}
	front := bikeOf(disc)
	front.Rear = spared
	if item, listed := find(on(front, 100, indoors), "wash"); !listed || item.Due != 95 {
		t.Errorf("the rear spared: %v, %+v", listed, item)
	}
	if item, listed := find(on(bikeOf(spared), 100, indoors, salted), "wash"); !listed || item.Due != 96 {
		t.Errorf("salt on the road: %v, %+v", listed, item)
	}
}
