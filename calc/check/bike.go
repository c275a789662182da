package check

// Wheel is what is known of one wheel and its brake; "" is not known, everywhere.
type Wheel struct {
	Setup      string // tube, tubeless, insert
	Profile    string // hooked, hookless, unknown
	Rim        string // materials as in package salt
	Nipple     string
	Spoke      string
	Hub        string
	Brake      string  // disc, rim
	Axle       string  // quick_release, through_axle
	RotorMount string  // six_bolt, lockring
	RotorMin   float64 // mm, the mark on the rotor; 0 is not known
	Spared     bool    // another wheel takes its place indoors, on the trainer
}

// Bike is both wheels and what is asked about the rest.
type Bike struct {
	Front, Rear Wheel
	Frame       string // material of frame or fork
	Bar         string // material of bar or stem
	Road        bool   // a road bike: 4 mm of room will do, and its pads are thinner when new
	Racing      bool   // the tighter run-out
}

// need is what a wheel or bike must have for a row to be asked; all of a row's needs must hold.
type need uint32

const (
	tube need = 1 << iota
	tubeless
	insert
	hookless
	carbonRim
	aluminiumPart // rim, nipple or hub: white powder is where it corrodes
	aluminiumNipple
	discBrake
	rimBrake
	quickRelease
	throughAxle
	sixBolt
	lockring
	carbonFrame
	carbonBar
	sweaty
	shaken // crashed or carried
	fresh  // new pads or rotor, not ridden since
)

// is says whether a value is the wanted one, or could be.
func is(value string, wanted ...string) bool {
	if value == "" || value == "unknown" {
		return true
	}
	for _, w := range wanted {
		if value == w {
			return true
		}
	}
	return false
}

// has gathers what a bike has, or may have, at one end, with what its history adds.
func (b Bike) has(w Wheel, past state) need {
	var out need
	add := func(n need, holds bool) {
		if holds {
			out |= n
		}
	}
	add(tube, is(w.Setup, "tube"))
	add(tubeless, is(w.Setup, "tubeless", "insert"))
	add(insert, is(w.Setup, "insert"))
	add(hookless, is(w.Profile, "hookless"))
	add(carbonRim, is(w.Rim, "carbon"))
	add(aluminiumPart, is(w.Rim, "aluminium") || is(w.Nipple, "aluminium") || is(w.Hub, "aluminium"))
	add(aluminiumNipple, is(w.Nipple, "aluminium"))
	add(discBrake, is(w.Brake, "disc"))
	add(rimBrake, is(w.Brake, "rim"))
	add(quickRelease, is(w.Axle, "quick_release"))
	add(throughAxle, is(w.Axle, "through_axle"))
	add(sixBolt, is(w.RotorMount, "six_bolt"))
	add(lockring, is(w.RotorMount, "lockring"))
	add(carbonFrame, is(b.Frame, "carbon"))
	add(carbonBar, is(b.Bar, "carbon"))
	add(sweaty, past.sweaty)
	add(shaken, past.crashed || past.carried)
	add(fresh, past.fresh)
	return out
}
