package pack

import "slices"

// Step is one thing to do.
type Step struct {
	ID, Stage, Text string
	Tool            string   // "" by hand
	Needs           []string // steps of the same list that come first
	Loosens         bool     // it opens what arrival must close
	Must            bool     // on arrival: not ridden before it is done
	Undoes          []string // on arrival: the steps of the way out that it takes back
	AsBuilt         []string // what was written down, or is to be, at this step
}

// Tools, in the words of the list of what comes along. Sizes vary: the step says to try them at home.
const (
	tape     = "tape measure"
	hex8     = "8 mm hex key"
	spanner  = "15 mm pedal spanner"
	hex6     = "6 mm hex key"
	torx     = "T25 key"
	ringTool = "rotor lockring tool"
	hexSmall = "4 and 5 mm hex keys"
	pump     = "pump with gauge"
)

// plan is a list of steps as it grows. A need that this bike has no step for falls away, so what is left always stands earlier.
type plan struct{ steps []Step }

func (p *plan) add(s Step) {
	s.Needs = slices.DeleteFunc(s.Needs, func(id string) bool { return !p.has(id) })
	p.steps = append(p.steps, s)
}

// loosen adds a step that opens something: as-built is written down before any.
func (p *plan) loosen(s Step) {
	s.Loosens = true
	s.Needs = append([]string{asBuiltID}, s.Needs...)
	p.add(s)
}

func (p *plan) has(id string) bool {
	return slices.ContainsFunc(p.steps, func(s Step) bool { return s.ID == id })
}

// present are those of some steps that this bike has.
func (p *plan) present(ids ...string) []string {
	return slices.DeleteFunc(ids, func(id string) bool { return !p.has(id) })
}

// ids are those of the steps that pass.
func (p *plan) ids(pass func(Step) bool) []string {
	var out []string
	for _, s := range p.steps {
		if pass(s) {
			out = append(out, s.ID)
		}
	}
	return out
}

// tools are what the steps take, each once, in the order of first use.
func tools(lists ...[]Step) []string {
	var out []string
	for _, list := range lists {
		for _, s := range list {
			if s.Tool != "" && !slices.Contains(out, s.Tool) {
				out = append(out, s.Tool)
			}
		}
	}
	return out
}
