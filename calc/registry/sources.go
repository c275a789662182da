package registry

// standing is how well a constant or formula is founded.
type standing string

const (
	published standing = "published" // in a named kind of source
	practice  standing = "practice"  // common practice, no source to quote
	memory    standing = "memory"    // from memory, to be confirmed
	ours      standing = "ours"      // our choice
)

// source is one constant, table or formula that calculations use: what it is, its values, where it comes from and how well
// it is founded. Values are taken from the packages that compute with them, so what is told is what is used.
type source struct {
	group, words string
	formula      string // "" for a plain constant
	values       []amount
	from         string
	mark         standing
}

// amount is one value of a source, in a unit that people read.
type amount struct {
	words string // "" where the source has one value
	value float64
	unit  string
}

func one(value float64, unit string) []amount { return []amount{{"", value, unit}} }

func percent(share float64) float64 { return share * 100 }

// described is the published form.
func (s source) described() fields {
	values := make([]any, len(s.values))
	for i, v := range s.values {
		values[i] = fields{{"words", v.words}, {"value", tidy(v.value)}, {"unit", v.unit}}
	}
	return fields{
		{"group", s.group}, {"words", s.words}, {"formula", s.formula}, {"values", values},
		{"source", s.from}, {"mark", string(s.mark)},
	}
}

func describeSources(list []source) []any {
	out := make([]any, len(list))
	for i, s := range list {
		out[i] = s.described()
	}
	return out
}

func joined(lists ...[]source) []source {
	var out []source
	for _, list := range lists {
		out = append(out, list...)
	}
	return out
}
