package salt

// Wheel is what a wheel is made of; "" is not known.
type Wheel struct{ Rim, Nipple, Spoke, Hub, Bearing Material }

// Couple is a place where two materials touch: the anode gives way.
type Couple struct {
	Where          string // rim_nipple, nipple_spoke, spoke_hub, hub_bearing
	Anode, Cathode Material
	GapV, OverV    float64 // the gap, and what it has above the limit
}

// Rank words the couple by itself.
func (c Couple) Rank() Rank {
	switch {
	case c.OverV >= StrongFromV:
		return Strong
	case c.OverV >= UsualFromV:
		return Usual
	case c.OverV > 0:
		return Mild
	}
	return Within
}

// Couples are the places of a wheel whose two materials are both known, in order from the rim inwards.
func (w Wheel) Couples() []Couple {
	var out []Couple
	for _, place := range w.places() {
		if couple, known := coupleOf(place); known {
			out = append(out, couple)
		}
	}
	return out
}

// Places lists where two materials touch, as keys.
func Places() []string { return []string{"rim_nipple", "nipple_spoke", "spoke_hub", "hub_bearing"} }

type place struct {
	where         string
	first, second Material
}

func (w Wheel) places() []place {
	return []place{
		{"rim_nipple", w.Rim, w.Nipple}, {"nipple_spoke", w.Nipple, w.Spoke}, {"spoke_hub", w.Spoke, w.Hub}, {"hub_bearing", w.Hub, w.Bearing},
	}
}

func coupleOf(p place) (Couple, bool) {
	gap, known := Gap(p.first, p.second)
	if !known {
		return Couple{}, false
	}
	c := Couple{Where: p.where, Anode: p.first, Cathode: p.second, GapV: gap}
	first, _ := metal(p.first)
	second, _ := metal(p.second)
	if second.Low < first.Low { // in sea water; passive stainless steel is nobler there than its index
		c.Anode, c.Cathode = p.second, p.first
	}
	if gap > GapLimit {
		c.OverV = tidy(gap - GapLimit)
	}
	return c, true
}

// Rank words how far a couple lies above the limit, and sets how soon a wash is due.
type Rank int

// The ranks, mildest first.
const (
	Within Rank = iota // no more than the limit
	Mild
	Usual
	Strong
)

// String is the key of a rank.
func (r Rank) String() string { return Ranks()[r] }

// Ranks lists the keys, mildest first.
func Ranks() []string { return []string{"within", "mild", "usual", "strong"} }

// From these volts above the limit a couple is usual, or strong (our choice: aluminium rim, brass nipples and stainless spokes in
// an aluminium hub, a good wheel, is usual; aluminium in carbon, a known failure, is strong).
const (
	UsualFromV  = 0.40
	StrongFromV = 1.00
)

// rank is that of the worst couple. A rim or nipple that is not known counts as strong: aluminium nipples may sit in a carbon rim.
func (w Wheel) rank() (Rank, Couple) {
	worst := Couple{}
	for _, c := range w.Couples() {
		if c.OverV > worst.OverV {
			worst = c
		}
	}
	_, rimKnown := metal(w.Rim)
	_, nippleKnown := metal(w.Nipple)
	switch {
	case !rimKnown || !nippleKnown || worst.OverV >= StrongFromV:
		return Strong, worst
	case worst.OverV >= UsualFromV || len(w.Couples()) < len(w.places()):
		return Usual, worst
	}
	return Mild, worst
}
