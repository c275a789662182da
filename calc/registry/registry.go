package registry

import "encoding/json"

// calculation is one entry: what it is called, what it does, its table and an example, and the function.
type calculation struct {
	name, sentence string
	fields         []Field
	example        string
	run            func(values) (any, *Error)
}

// all lists the calculations in the order they are published.
var all = []calculation{pressureCalculation, airCalculation, leakCalculation}

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
	return nil, &Error{CodeUnknown, "", "There is no calculation of this name."}
}

func (c calculation) call(body []byte) ([]byte, error) {
	given, fault := decode(body, c.fields)
	if fault != nil {
		return nil, fault
	}
	answer, fault := c.run(given)
	if fault != nil {
		return nil, fault
	}
	raw, err := json.Marshal(answer)
	if err != nil { // an infinity or NaN in an answer: never shown as a number
		return nil, &Error{CodeCannot, "", "These values cannot be computed."}
	}
	return raw, nil
}

// publication is one calculation as the description shows it.
type publication struct {
	Name     string          `json:"name"`
	Sentence string          `json:"sentence"`
	Fields   []described     `json:"fields"`
	Example  json.RawMessage `json:"example"`
}

// Describe is the JSON list of all calculations: name, sentence, flat field list and example.
func Describe() []byte {
	list := make([]publication, len(all))
	for i, c := range all {
		list[i] = publication{c.name, c.sentence, describe("", c.fields), json.RawMessage(c.example)}
	}
	raw, err := json.Marshal(list)
	if err != nil { // only a malformed example of our own could do this; a test keeps them well-formed
		panic(err)
	}
	return raw
}
