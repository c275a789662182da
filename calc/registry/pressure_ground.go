package registry

import (
	"strconv"

	"rimside/calc/road"
	"rimside/calc/unit"
)

// groundOf turns the stretches into roughness and speed: by what the eye sees, or by a typed roughness.
func groundOf(items []values) ([]road.Stretch, *Error) {
	var total float64
	out := make([]road.Stretch, len(items))
	for i, v := range items {
		stretch, fault := stretchOf("ground."+strconv.Itoa(i), v)
		if fault != nil {
			return nil, fault
		}
		total += stretch.Share
		out[i] = stretch
	}
	if total <= 0 {
		return nil, &Error{CodeBounds, "ground.0.share", "Stretch's share: at least one must be more than 0."}
	}
	return out, nil
}

func stretchOf(path string, v values) (road.Stretch, *Error) {
	s := road.Stretch{Share: v.num("share"), Rough: road.Roughness(v.num("gd0")), Speed: unit.FromKMH(v.num("kmh"))}
	switch {
	case v.has("kind") && v.has("gd0"):
		return s, &Error{CodeConflict, path + ".gd0", "Name the ground or type its roughness, not both."}
	case v.has("kind"):
		kind, _ := road.KindOf(v.text("kind"))
		s.Rough, s.Soft = kind.Rough, kind.Soft
		if !v.has("kmh") {
			s.Speed = kind.Speed
		}
	case !v.has("gd0"):
		return s, &Error{CodeMissing, path + ".kind", "Say what the ground is, or type its roughness."}
	case !v.has("kmh"):
		return s, &Error{CodeMissing, path + ".kmh", "A typed roughness needs a speed."}
	}
	if v.yes("washboard") {
		s.Rough = s.Rough.Washboard()
	}
	return s, nil
}
