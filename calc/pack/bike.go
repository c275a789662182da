package pack

import "rimside/calc/check"

// Bike is what packing asks of a bike; "" is not known, everywhere.
type Bike struct {
	check.Bike
	Electric   string // yes, no: shifting or motor
	Pedals     string // spanner, hex: what turns them
	Derailleur string // hanger, frame (bolted straight to it), none
}

// Way is how the bike travels.
type Way string

// The ways.
const (
	AirBag  Way = "air_bag"
	AirBox  Way = "air_box"
	AirCase Way = "air_case"
	Train   Way = "train"
	Car     Way = "car"
	Courier Way = "courier"
)

// Ways lists them as keys.
func Ways() []string {
	return []string{string(AirBag), string(AirBox), string(AirCase), string(Train), string(Car), string(Courier)}
}

// handled says whether strangers lift, stack and throw the bike: it then goes as small as it gets, its rotors off.
func (w Way) handled() bool { return w != Train && w != Car }

// could says whether a value is the wanted one or is not known; sure says that it is known to be.
func could(value, wanted string) bool { return value == wanted || value == "" || value == "unknown" }

func sure(value, wanted string) bool { return value == wanted }

// only begins the text of a step that is there because a build is not known.
func only(known bool, words string) string {
	if known {
		return ""
	}
	return "Only " + words + ". "
}

// end is one end of the bike.
type end struct {
	side, words string
	check.Wheel
}

func (b Bike) ends() []end {
	return []end{{"front", "Front", b.Front}, {"rear", "Rear", b.Rear}}
}

func (e end) disc() bool { return could(e.Brake, "disc") }

// surelyDisc is false where the brake is not known.
func (e end) surelyDisc() bool { return sure(e.Brake, "disc") }

// mounts are the ways in which this end's rotor may be held, each with its words and tool.
func (e end) mounts() []mount {
	var out []mount
	for _, m := range []mount{
		{key: "six_bolt", id: e.side + "_rotor_six", words: "with six rotor bolts", tool: torx},
		{key: "lockring", id: e.side + "_rotor_ring", words: "with a rotor lockring", tool: ringTool},
	} {
		if e.disc() && could(e.RotorMount, m.key) {
			m.known = e.surelyDisc() && sure(e.RotorMount, m.key)
			out = append(out, m)
		}
	}
	return out
}

type mount struct {
	key, id, words, tool string
	known                bool
}
