package registry

import (
	"rimside/calc/ride"
	"rimside/calc/road"
	"rimside/calc/unit"
)

const (
	groupGround = "Ground"
	groupRider  = "Rider and bike"
)

func roughness() []source {
	return []source{
		{groupGround, "Roughness of a ground", "Gd(n) = Gd(n0) (n / n0)^−2", []amount{{"n0", road.ReferenceWave, "1/m"}},
			"ISO 8608, one-sided, waviness 2", published},
		{groupGround, "What shaking costs", "F = π² k Gd(n0) n0², less what the contact averages away", nil,
			"Zuo and Zhang 2013; Turner, arXiv 2405.00019", published},
		{groupGround, "Roughness by what the eye sees, Gd(n0)", "", perGround(func(k road.Kind) float64 { return float64(k.Rough) * 1e6 }, "10⁻⁶ m³"),
			"placed on the classes of ISO 8608", ours},
		{groupGround, "Speed where none is typed", "", perGround(func(k road.Kind) float64 { return float64(k.Speed) * 3.6 }, "km/h"),
			"what riders do there", ours},
		{groupGround, "Washboard multiplies the roughness by", "", one(road.WashboardFactor, ""), "corrugations stand out of the rest", ours},
	}
}

func rider() []source {
	return []source{
		{groupRider, "Weight of a mass", "W = m g", one(unit.Gravity, "m/s²"), "standard gravity, ISO 80000-3", published},
		{groupRider, "Seated body on its own spring and damper", "", []amount{
			{"frequency", road.BodyHertz, "Hz"}, {"damping ratio", road.BodyDamping, ""},
		}, "Fairley and Griffin 1989", published},
		{groupRider, "Front wheel’s share of the weight where none is given", "", one(percent(ride.FrontShare), "%"), "road riders on level ground", memory},
		{groupRider, "Most of the weight on one wheel", "", []amount{
			{"front, hard braking", percent(ride.BrakingFront), "%"}, {"rear, seated climbing", percent(ride.ClimbingRear), "%"},
		}, "on the hard side, for the floor", memory},
	}
}

var groundWords = map[string]string{
	"smooth": "sealed, nothing to feel", "patched": "sealed, cracks and patches", "chips": "sealed, coarse chips", "setts": "setts or cobbles",
	"rice": "stones like rice", "pea": "stones like peas", "walnut": "stones like walnuts", "egg": "stones like eggs", "fist": "stones like fists",
}

// perGround lists the grounds that a spectrum describes.
func perGround(of func(road.Kind) float64, unit string) []amount {
	var out []amount
	for _, key := range road.Kinds() {
		if kind, _ := road.KindOf(key); !kind.Soft {
			out = append(out, amount{groundWords[key], of(kind), unit})
		}
	}
	return out
}
