package registry

import (
	"strconv"

	"rimside/calc/road"
	"rimside/calc/unit"
)

// checkGround holds each stretch to being named or typed, and the shares to being something.
func checkGround(items []values) *Error {
	var faults *Error
	shares := false
	for i, v := range items {
		faults = together(faults, checkStretch("ground."+strconv.Itoa(i), v))
		_, known := v["share"].(float64)
		shares = shares || !known || v.num("share") > 0
	}
	if len(items) > 0 && !shares {
		faults = together(faults, wrong(CodeBounds, "ground.0.share", "above", 0.0))
	}
	return faults
}

func checkStretch(path string, v values) *Error {
	switch {
	case v == nil: // refused as no object
	case v.has("kind") && v.has("gd0"):
		return wrong(CodeConflict, path+".gd0", "with", path+".kind")
	case !v.has("kind") && !v.has("gd0"):
		return wrong(CodeMissing, path+".kind")
	case v.has("gd0") && !v.has("kmh"):
		return wrong(CodeMissing, path+".kmh", "with", path+".gd0")
	}
	return checkInterval(path, v)
}

// checkInterval holds the ends of a measured roughness to standing round it.
func checkInterval(path string, v values) *Error {
	var faults *Error
	for _, end := range []string{"gd0_low", "gd0_high"} {
		switch {
		case !v.has(end):
		case !v.has("gd0"):
			faults = together(faults, wrong(CodeMissing, path+".gd0", "with", path+"."+end))
		case v.num("gd0") > 0 && v.num(end) > 0 && (end == "gd0_low") != (v.num(end) <= v.num("gd0")) && v.num(end) != v.num("gd0"):
			faults = together(faults, wrong(CodeConflict, path+"."+end, "with", path+".gd0"))
		}
	}
	return faults
}

// groundOf turns the stretches into roughness and speed: by what the eye sees, or by a typed roughness.
func groundOf(items []values) []road.Stretch {
	out := make([]road.Stretch, len(items))
	for i, v := range items {
		out[i] = stretchOf(v)
	}
	return out
}

func stretchOf(v values) road.Stretch {
	s := road.Stretch{Share: v.num("share"), Rough: road.Roughness(v.num("gd0")), Speed: unit.FromKMH(v.num("kmh")),
		Low: road.Roughness(v.num("gd0_low")), High: road.Roughness(v.num("gd0_high"))}
	if v.has("kind") {
		kind, _ := road.KindOf(v.text("kind"))
		s.Rough, s.Soft = kind.Rough, kind.Soft
		if !v.has("kmh") {
			s.Speed = kind.Speed
		}
	}
	if v.yes("washboard") {
		s.Rough, s.Low, s.High = s.Rough.Washboard(), s.Low.Washboard(), s.High.Washboard()
	}
	return s
}
