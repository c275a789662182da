// Package ride is the rider and the bike on two wheels: who carries what, and what each wheel loses along the day's ground.
//
// Sources: statics for the load share, checked against the benchmark bicycle of Meijaard et al. 2007; the default shares for
// riding, braking and seated climbing are from memory and say so.
package ride

import "rimside/calc/unit"

// Shares of the whole weight (from memory; the last two are chosen on the hard side for the floor).
const (
	// FrontShare is what the front wheel carries when nothing better is known.
	FrontShare = 0.42
	// BrakingFront is what the front wheel carries in hard braking.
	BrakingFront = 0.60
	// ClimbingRear is what the rear wheel carries in seated climbing.
	ClimbingRear = 0.65
)

// Load is one wheel's share of rider and bike.
type Load struct {
	Weight unit.Newton
	Rigid  unit.Kilogram // the bike's part, moving with the wheel
	Body   unit.Kilogram // the rider's part
}

// LoadOf splits a mass carried by one wheel between bike and rider in their own ratio:
// m_u = m bike/(rider + bike), m_r = m - m_u.
func LoadOf(carried, rider, bike unit.Kilogram) Load {
	rigid := carried * bike / (rider + bike)
	return Load{Weight: carried.Weight(), Rigid: rigid, Body: carried - rigid}
}

// Scaled is the same load made heavier or lighter.
func (l Load) Scaled(factor float64) Load {
	return Load{
		Weight: l.Weight * unit.Newton(factor),
		Rigid:  l.Rigid * unit.Kilogram(factor),
		Body:   l.Body * unit.Kilogram(factor),
	}
}

// PointMass is a mass and its distance ahead of the rear wheel's contact.
type PointMass struct {
	Mass  unit.Kilogram
	Ahead unit.Metre
}

// ShareOfFront is the front wheel's share of several masses by statics: sum(m x)/(sum(m) wheelbase).
func ShareOfFront(wheelbase unit.Metre, masses ...PointMass) float64 {
	var moment, total float64
	for _, m := range masses {
		moment += float64(m.Mass) * float64(m.Ahead)
		total += float64(m.Mass)
	}
	return moment / (total * float64(wheelbase))
}
