package registry

// calculation is one entry: what it is called, its table and an example, and the function.
type calculation struct {
	name     string
	table    []*Field
	example  string
	together func(values) *Error        // faults that no single field shows; it may see faulty values. nil where there are none
	run      func(values) (any, *Error) // an object, fields, or a list, []any
}

// all lists the calculations in the order they are published.
var all = []calculation{
	pressureCalculation, airCalculation, leakCalculation, expectedCalculation, shiftCalculation, co2Calculation, pumpCalculation,
	fitCalculation, seatCalculation, saltCalculation, matchCalculation, bikeMatchCalculation, coverCalculation, shareCalculation, checksCalculation, readyCalculation, dueCalculation, packCalculation,
	spokesCalculation, lacingCalculation, trialCalculation, dealCalculation, groundCalculation, qrCalculation,
}

// Names lists the calculations.
func Names() []string {
	names := make([]string, len(all))
	for i, c := range all {
		names[i] = c.name
	}
	return names
}

// Example is a body that the named calculation answers, or "" for an unknown name.
func Example(name string) string {
	for _, c := range all {
		if c.name == name {
			return c.example
		}
	}
	return ""
}

// Call runs the named calculation on one JSON body and returns its JSON answer. The error is always an *Error: code
// CodeUnknown for a name that is not there, any other code for a body that does not fit the calculation's table.
func Call(name string, body []byte) ([]byte, error) {
	for _, c := range all {
		if c.name == name {
			return c.call(body)
		}
	}
	return nil, wrong(CodeUnknown, "")
}

func (c calculation) call(body []byte) ([]byte, error) {
	given, fault := decode(body, c.table)
	if given != nil && c.together != nil {
		fault = together(fault, c.together(given).besides(fault))
	}
	if fault != nil {
		return nil, fault
	}
	answer, fault := c.run(given)
	if fault != nil {
		return nil, fault
	}
	out, ok := encode(answer)
	if !ok { // an infinity or NaN in an answer: never shown as a number
		return nil, wrong(CodeCannot, "", "why", "not_finite")
	}
	return out, nil
}
