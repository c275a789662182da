package oplog

import (
	"cmp"
	"encoding/json"
	"slices"
)

// Candidate is one value that a field may have: it was set, and no op that anybody has seen supersedes it.
type Candidate struct {
	Value json.RawMessage
	Op    string   // the op with the greatest (at, id) that set it
	At    int64    // ms since 1970, of that op
	Ops   []string // all ops that set this value and are not superseded, sorted
}

// Field is a field's state: a multi-value register. It differs from the one of the textbooks in three ways. What an op
// supersedes it names itself, in its bases: that is what a person saw, not what the phone knew, so there are no version
// vectors. Equal values are one candidate. And one of several is the winner, the greatest (at, id), as in a last-writer-wins
// register; the siblings are kept and shown until an op supersedes them all.
type Field struct {
	Winner   Candidate
	Siblings []Candidate
}

// State is what a record looks like: a function of its ops alone, whatever order they came in and however often. Its ops
// are an op set, a grow-only set that is joined by union, so that whoever holds the same ops shows the same.
type State struct {
	Rec, Kind string
	Erased    bool             // its values are gone for good
	Deleted   bool             // hidden: a tombstone is the winner
	Fields    map[string]Field // without "deleted"
	Deletion  *Field           // the field "deleted", once it was set
	Newest    int64            // the greatest time among its ops
	Conflicts []string         // names of fields with siblings; "deleted" when a delete and an edit missed each other
	Unseen    []string         // ops that the tombstones had not seen
}

// Merge works out a record's state from all its ops.
func Merge(ops []Op) State {
	ops = ordered(ops)
	state := State{Fields: map[string]Field{}}
	for _, op := range ops {
		state.Rec, state.Newest = op.Rec, op.At
		state.Erased = state.Erased || op.Erases()
		if op.Kind != KindErase {
			state.Kind = op.Kind
		}
	}
	if state.Erased {
		state.Kind = cmp.Or(state.Kind, erasedKind(ops))
		return state
	}
	for name, found := range candidates(ops) {
		field := Field{Winner: found[0], Siblings: found[1:]}
		if name == FieldDeleted {
			state.Deletion = &field
			continue
		}
		state.Fields[name] = field
	}
	state.hide(ops)
	return state
}

// ordered gives every op once, by (at, id).
func ordered(ops []Op) []Op {
	sorted := slices.Clone(ops)
	slices.SortFunc(sorted, func(a, b Op) int { return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.ID, b.ID)) })
	return slices.CompactFunc(sorted, func(a, b Op) bool { return a.ID == b.ID })
}

func erasedKind(ops []Op) string {
	for _, op := range ops {
		var kind string
		if op.Kind == KindErase && json.Unmarshal(op.Set["kind"], &kind) == nil {
			return kind
		}
	}
	return ""
}

// candidates gives for each field its values, the winner first. An op is superseded when another op that sets the field too
// names it in its bases.
func candidates(ops []Op) map[string][]Candidate {
	superseded := map[string]map[string]bool{} // field -> ids
	setting := map[string][]Op{}               // field -> the ops that set it, newest first
	for _, op := range slices.Backward(ops) {
		for name := range op.Set {
			setting[name] = append(setting[name], op)
			if superseded[name] == nil {
				superseded[name] = map[string]bool{}
			}
			for _, base := range op.Bases[name] {
				if base != op.ID {
					superseded[name][base] = true
				}
			}
		}
	}
	fields := make(map[string][]Candidate, len(setting))
	for name, ops := range setting {
		heads := slices.DeleteFunc(slices.Clone(ops), func(op Op) bool { return superseded[name][op.ID] })
		if len(heads) == 0 {
			heads = ops // ops that supersede each other in a circle: none may vanish
		}
		fields[name] = grouped(name, heads)
	}
	return fields
}

// grouped makes one candidate of all ops with equal values.
func grouped(name string, ops []Op) []Candidate {
	if len(ops) == 1 { // nearly always
		return []Candidate{{Value: ops[0].Set[name], Op: ops[0].ID, At: ops[0].At, Ops: []string{ops[0].ID}}}
	}
	var groups []Candidate
	known := map[string]int{} // by value
	for _, op := range ops {
		value := op.Set[name]
		key := canonical(value)
		at, found := known[key]
		if !found {
			known[key] = len(groups)
			groups = append(groups, Candidate{Value: value, Op: op.ID, At: op.At, Ops: []string{op.ID}})
			continue
		}
		groups[at].Ops = append(groups[at].Ops, op.ID)
	}
	for _, group := range groups {
		slices.Sort(group.Ops)
	}
	return groups
}

// hide works out whether the record is hidden, and every conflict. A tombstone is an op that sets "deleted" to true; it names
// the ops it has seen, as an observed-remove set does, and what it had not seen is a conflict rather than a survivor. A hidden
// record's fields are in conflict only when somebody edited it without knowing of the delete: otherwise whoever deleted it
// knew.
func (s *State) hide(ops []Op) {
	s.Deleted = s.Deletion != nil && isTrue(s.Deletion.Winner.Value)
	if s.Deleted {
		s.Unseen = s.unseen(ops)
	}
	if len(s.Unseen) > 0 || s.Deletion != nil && len(s.Deletion.Siblings) > 0 {
		s.Conflicts = append(s.Conflicts, FieldDeleted)
	}
	if !s.Deleted || len(s.Unseen) > 0 {
		for name, field := range s.Fields {
			if len(field.Siblings) > 0 {
				s.Conflicts = append(s.Conflicts, name)
			}
		}
	}
	slices.Sort(s.Conflicts)
}

// unseen lists the ops of the record's values that no tombstone had seen.
func (s *State) unseen(ops []Op) []string {
	seen := map[string]bool{}
	for _, op := range ops {
		if isTrue(op.Set[FieldDeleted]) && s.isHead(op.ID) {
			for _, id := range op.Seen {
				seen[id] = true
			}
		}
	}
	unseen := map[string]bool{}
	for _, field := range s.Fields {
		for _, candidate := range append([]Candidate{field.Winner}, field.Siblings...) {
			for _, id := range candidate.Ops {
				if !seen[id] {
					unseen[id] = true
				}
			}
		}
	}
	return sortedKeys(unseen)
}

// isHead tells whether an op is among the candidates of the field "deleted".
func (s *State) isHead(id string) bool {
	return slices.Contains(s.Deletion.Winner.Ops, id) ||
		slices.ContainsFunc(s.Deletion.Siblings, func(sibling Candidate) bool { return slices.Contains(sibling.Ops, id) })
}

func isTrue(value json.RawMessage) bool { return string(value) == "true" }

func sortedKeys(set map[string]bool) []string {
	keys := make([]string, 0, len(set))
	for key := range set {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}
