package registry

// standing is how well a constant or formula is founded.
type standing string

const (
	published standing = "published" // in a named kind of source
	practice  standing = "practice"  // common practice, no source to quote
	memory    standing = "memory"    // from memory, to be confirmed
	ours      standing = "ours"      // our choice
)

// Source is one constant, table or formula that calculations use: what it is, its values, where it comes from and how well it
// is founded. Values are taken from the packages that compute with them, so what is told is what is used.
type Source struct {
	Group, Words string
	Formula      string // "" for a plain constant
	Values       []Amount
	From         string
	Mark         standing
}

// Amount is one value of a source, in a unit that people read.
type Amount struct {
	Words string // "" where the source has one value
	Value float64
	Unit  string
}

type (
	source = Source
	amount = Amount
)

// Sources lists what the named calculation rests on. Functions, not variables, hold them: the browser's build, which never asks,
// leaves them out.
func Sources(name string) []Source {
	list := sourcesOf(name)
	for _, s := range list {
		for i := range s.Values {
			s.Values[i].Value = tidy(s.Values[i].Value)
		}
	}
	return list
}

func sourcesOf(name string) []source {
	switch name {
	case "pressure":
		return joined(deciding(), pairing(), tyreShape(), tyreSpring(), casingLoss(), roughness(), rider(), afterRide(), atmosphere(), pumping())
	case "air":
		return atmosphere()
	case "leak", "expected":
		return joined(atmosphere(), leaking())
	case "shift":
		return afterRide()
	case "co2":
		return gasSources()
	case "pump":
		return pumping()
	case "fit":
		return fitSources()
	case "seat":
		return joined(pairing(), seatSources())
	case "match", "cover", "share":
		return spareSources()
	case "bike_match":
		return spareBikeSources()
	case "salt":
		return saltSources()
	case "ready":
		return joined(readySources(), checkSources(), pairing())
	case "checks":
		return checkSources()
	case "due":
		return joined(intervals(), checkSources(), saltSources())
	case "pack":
		return packSources()
	case "spokes", "lacing":
		return spokesSources()
	case "ground":
		return joined(measuring(), roughness(), tyreShape(), tyreSpring(), rider())
	case "qr":
		return tagSources()
	case "trial", "deal":
		return trialSources()
	}
	return nil
}

func one(value float64, unit string) []amount { return []amount{{"", value, unit}} }

func percent(share float64) float64 { return share * 100 }

// joined puts lists together.
func joined(lists ...[]source) []source {
	var out []source
	for _, list := range lists {
		out = append(out, list...)
	}
	return out
}
