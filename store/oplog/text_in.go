package oplog

import "encoding/json"

// TextIn reads a field's value that should be a text; anything else gives "".
func TextIn(value json.RawMessage) string {
	var text string
	if json.Unmarshal(value, &text) != nil {
		return ""
	}
	return text
}

// TextsIn reads a field's value that should be a list of texts; anything else gives none.
func TextsIn(value json.RawMessage) []string {
	var texts []string
	if json.Unmarshal(value, &texts) != nil {
		return nil
	}
	return texts
}
