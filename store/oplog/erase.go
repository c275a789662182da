package oplog

import (
	"bytes"
	"encoding/json"
	"maps"
	"slices"
	"strconv"
)

// Erase gives what is kept of an op once its record was erased: the frame that merging, digests and clocks need, with
// no value left. The erase op itself is kept as it is.
func (op Op) Erase() Op {
	if op.Kind == KindErase {
		return op
	}
	erased := Op{ID: op.ID, Rec: op.Rec, Kind: op.Kind, At: op.At, Bases: op.Bases, Erased: true, Set: map[string]json.RawMessage{}}
	for name := range op.Set {
		erased.Set[name] = json.RawMessage("null")
	}
	erased.Raw = erased.frame()
	return erased
}

// frame writes an erased op in one fixed way, names sorted.
func (op Op) frame() []byte {
	var out bytes.Buffer
	out.WriteString(`{"id":` + quoted(op.ID) + `,"at":` + strconv.FormatInt(op.At, 10) + `,"kind":` + quoted(op.Kind) + `,"rec":` + quoted(op.Rec) + `,"set":{`)
	separate := ""
	for _, name := range slices.Sorted(maps.Keys(op.Set)) {
		out.WriteString(separate + quoted(name) + ":null")
		separate = ","
	}
	out.WriteString("}")
	if op.Bases != nil {
		out.WriteString(`,"bases":{`)
		separate = ""
		for _, name := range slices.Sorted(maps.Keys(op.Bases)) {
			out.WriteString(separate + quoted(name) + ":" + quotedList(op.Bases[name]))
			separate = ","
		}
		out.WriteString("}")
	}
	out.WriteString(`,"erased":true}`)
	return out.Bytes()
}

func quoted(text string) string {
	out, err := json.Marshal(text)
	if err != nil {
		panic(err) // a text always marshals
	}
	return string(out)
}

func quotedList(ids []string) string {
	if len(ids) == 0 {
		return "[]"
	}
	out, err := json.Marshal(ids)
	if err != nil {
		panic(err) // texts always marshal
	}
	return string(out)
}

// Blobs names the files that an op's values refer to: every text of 64 lowercase hex digits is a file's SHA-256.
func Blobs(op Op) []string {
	var found []string
	for _, raw := range op.Set {
		// Most values are too short to name one, or hold no text at all.
		if len(raw) >= 66 && bytes.IndexByte(raw, '"') >= 0 {
			found = appendBlobs(found, decoded(raw).value)
		}
	}
	slices.Sort(found)
	return slices.Compact(found)
}

func appendBlobs(found []string, value any) []string {
	switch value := value.(type) {
	case string:
		if isHex(value, 64) {
			found = append(found, value)
		}
	case []any:
		for _, each := range value {
			found = appendBlobs(found, each)
		}
	case map[string]any:
		for _, each := range value {
			found = appendBlobs(found, each)
		}
	}
	return found
}
