package pack

import "slices"

// Step is one thing to do.
type Step struct {
	ID, Stage string
	Tool      string   // "" by hand
	Takes     []string // what else it uses up or needs beside the tool
	Needs     []string // steps of the same list that come first
	Loosens   bool     // it opens what arrival must close
	Must      bool     // out: harm on the way without it; on arrival: not ridden before it is done
	Undoes    []string // on arrival: the steps of the way out that it takes back
	AsBuilt   []string // what was written down, or is to be, at this step
	Notes     []string // codes of what to say about it, in order
	Values    []Value  // the numbers in the notes
}

// Value is a number in a note; the name carries its unit.
type Value struct {
	Name   string
	Number float64
}

// What comes along. Sizes vary: one step says to try them at home.
const (
	TapeMeasure    = "tape_measure"
	Hex8           = "hex_8"
	Spanner15      = "spanner_15"
	PedalTools     = "pedal_tools" // both of these
	Hex6           = "hex_6"
	Torx25         = "torx_25"
	LockringTool   = "lockring_tool"
	RotorTools     = "rotor_tools" // both of these
	Hex45          = "hex_4_5"
	PumpGauge      = "pump_gauge"
	TorqueWrench   = "torque_wrench"
	LockringHandle = "lockring_handle"
	PadSpacers     = "pad_spacers"
	AxleBlocks     = "axle_blocks"
	RotorSleeve    = "rotor_sleeve"
	HubCaps        = "hub_caps"
	Padding        = "padding_straps"
	PartsBag       = "parts_bag"
)

// Tools lists what the bag may hold.
func Tools() []string {
	return []string{
		TapeMeasure, Hex8, Spanner15, PedalTools, Hex6, Torx25, LockringTool, RotorTools, Hex45, PumpGauge,
		TorqueWrench, LockringHandle, PadSpacers, AxleBlocks, RotorSleeve, HubCaps, Padding, PartsBag,
	}
}

// Stages lists the headings in the order of the work, out and then on arrival.
func Stages() []string {
	return []string{"before", "wheels", "brakes", "drive", "bars", "bag", "goods", "unpack", "rotors", "wheels_in", "fit", "tyres", "gears", "ride"}
}

// plan is a list of steps as it grows. A need that this bike has no step for falls away, so what is left always stands earlier.
type plan struct{ steps []Step }

func (p *plan) add(s Step) {
	s.Needs = p.present(s.Needs...)
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
	return slices.DeleteFunc(slices.Clone(ids), func(id string) bool { return !p.has(id) })
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

// bag is what the steps use, each once, in the order of first use.
func bag(lists ...[]Step) []string {
	var out []string
	for _, s := range slices.Concat(lists...) {
		for _, item := range append([]string{s.Tool}, s.Takes...) {
			if item != "" && !slices.Contains(out, item) {
				out = append(out, item)
			}
		}
	}
	return out
}

// when are some codes where a thing holds, and none where it does not.
func when(holds bool, codes ...string) []string {
	if holds {
		return codes
	}
	return nil
}
