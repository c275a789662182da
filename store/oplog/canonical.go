package oplog

import (
	"encoding/json"
	"maps"
	"slices"
	"strconv"
	"strings"
)

// canonical writes a JSON value so that equal values, as equalValues has it, are the same text and others are not: members
// in order, numbers as doubles. With it many values are told apart without comparing each with each.
func canonical(raw []byte) string {
	read := decoded(raw)
	if !read.ok {
		return "\x00" + string(raw)
	}
	var out strings.Builder
	writeCanonical(&out, read.value)
	return out.String()
}

func writeCanonical(out *strings.Builder, value any) {
	switch value := value.(type) {
	case json.Number:
		number := double(value)
		if number == 0 {
			number = 0 // minus zero is zero
		}
		out.WriteString(strconv.FormatFloat(number, 'g', -1, 64))
	case string:
		out.WriteString(strconv.Quote(value))
	case []any:
		out.WriteByte('[')
		for _, each := range value {
			writeCanonical(out, each)
			out.WriteByte(',')
		}
		out.WriteByte(']')
	case map[string]any:
		out.WriteByte('{')
		for _, name := range slices.Sorted(maps.Keys(value)) {
			out.WriteString(strconv.Quote(name))
			out.WriteByte(':')
			writeCanonical(out, value[name])
			out.WriteByte(',')
		}
		out.WriteByte('}')
	case bool:
		out.WriteString(strconv.FormatBool(value))
	default:
		out.WriteString("null")
	}
}
