package history

import (
	"cmp"
	"encoding/json"
	"slices"

	"rimside/store/oplog"
)

// Broken are ways to get it wrong, each of which a test of histories must notice.
type Broken struct {
	OneCursor   bool // the log's id is ignored: one cursor, and one list of what was sent, for all servers
	NoBump      bool // an op's time is the clock's, whatever is known of the record
	CursorFirst bool // the cursor moves before the answer is in
	ByArrival   bool // the op that arrived last wins
	NoSafetyNet bool // neither the digest nor a cursor behind the end is looked at; not broken by itself
}

// Phone is a phone in few words: what it holds, and what it believes each log has.
type Phone struct {
	broken Broken
	off    int64 // its clock's error, ms
	ops    []oplog.Op
	logs   map[string]*logState
	served map[int]string // the log last seen at each server
	Resets int
}

type logState struct {
	cursor int64
	sent   map[string]bool
	given  string // the answer that a reset could not help
}

func newPhone(off int64, broken Broken) *Phone {
	return &Phone{off: off, broken: broken, logs: map[string]*logState{}, served: map[int]string{}}
}

func (p *Phone) of(rec string) []oplog.Op {
	return slices.DeleteFunc(slices.Clone(p.ops), func(op oplog.Op) bool { return op.Rec != rec })
}

// state is how the phone shows a record.
func (p *Phone) state(rec string) oplog.State {
	state := oplog.Merge(p.of(rec))
	if p.broken.ByArrival {
		for name, field := range state.Fields {
			all := append([]oplog.Candidate{field.Winner}, field.Siblings...)
			slices.SortFunc(all, func(a, b oplog.Candidate) int { return cmp.Compare(p.place(b.Op), p.place(a.Op)) })
			state.Fields[name] = oplog.Field{Winner: all[0], Siblings: all[1:]}
		}
	}
	return state
}

func (p *Phone) place(id string) int {
	return slices.IndexFunc(p.ops, func(op oplog.Op) bool { return op.ID == id })
}

// write adds an op of this phone's own.
func (p *Phone) write(now int64, rec, kind string, set map[string]any, bases map[string][]string, seen []string) oplog.Op {
	newest := oplog.Merge(p.of(rec)).Newest
	at := oplog.NextAt(now+p.off, newest)
	if p.broken.NoBump {
		at = oplog.NextAt(now+p.off, 0)
	}
	body := map[string]any{"id": oplog.NewID(), "at": at, "kind": kind, "rec": rec, "set": set}
	if len(bases) > 0 {
		body["bases"] = bases
	}
	if seen != nil {
		body["seen"] = seen
	}
	raw, err := json.Marshal(body)
	if err != nil {
		panic(err) // texts and numbers always marshal
	}
	op, fault := oplog.Parse(raw)
	if fault != nil {
		panic(fault)
	}
	p.take([]oplog.Op{op})
	return op
}

// take adds ops that are not known yet.
func (p *Phone) take(ops []oplog.Op) {
	for _, op := range ops {
		if p.place(op.ID) < 0 {
			p.ops = append(p.ops, op)
		}
	}
	eraseAll(p.ops)
}

// meet exchanges everything with a server, batch by batch.
func (p *Phone) meet(number int, server Server, batch int) error {
	for range 3 { // once, and again after a reset
		again, err := p.round(number, server, batch)
		if err != nil || !again {
			return err
		}
	}
	return nil
}

func (p *Phone) log(id string) *logState {
	if p.broken.OneCursor {
		id = "the one"
	}
	if p.logs[id] == nil {
		p.logs[id] = &logState{sent: map[string]bool{}}
	}
	return p.logs[id]
}

func (p *Phone) reset(of *logState, answer string) bool {
	if of.given == answer {
		return false
	}
	*of = logState{sent: map[string]bool{}, given: answer}
	p.Resets++
	return true
}

// round pushes and pulls; again means that everything must be exchanged anew.
func (p *Phone) round(number int, server Server, batch int) (again bool, err error) {
	known := p.served[number]
	if known == "" { // a first look, to learn which log this is
		page, err := server.Pull("", 0, 1)
		if err != nil {
			return false, err
		}
		known = page.Log
		p.served[number] = known
	}
	state := p.log(known)
	for {
		unsent := slices.DeleteFunc(slices.Clone(p.ops), func(op oplog.Op) bool { return state.sent[op.ID] })
		if len(unsent) == 0 {
			break
		}
		unsent = unsent[:min(batch, len(unsent))]
		raws := make([][]byte, len(unsent))
		for i, op := range unsent {
			raws[i] = op.Raw
		}
		real, rejected, err := server.Push(known, raws)
		if err != nil {
			return false, err
		}
		if p.moved(number, known, real) {
			return true, nil
		}
		for _, op := range unsent {
			state.sent[op.ID] = true
		}
		if len(rejected) > 0 {
			panic("a history holds no op that is refused")
		}
	}
	return p.fetch(number, known, state, server, batch)
}

// moved notices that another log answers now.
func (p *Phone) moved(number int, known, real string) bool {
	if real == known || p.broken.OneCursor {
		return false
	}
	p.served[number] = real
	return true
}

func (p *Phone) fetch(number int, known string, state *logState, server Server, batch int) (again bool, err error) {
	log := known
	if p.broken.OneCursor {
		log = ""
	}
	for {
		since := state.cursor
		if p.broken.CursorFirst {
			state.cursor += int64(batch)
		}
		page, err := server.Pull(log, since, batch)
		if err != nil {
			return false, err
		}
		if p.moved(number, known, page.Log) {
			return true, nil
		}
		p.takePage(state, page)
		if !p.broken.NoSafetyNet && page.Next < since {
			return p.reset(state, page.Digest), nil
		}
		state.cursor = page.Next
		if page.More {
			continue
		}
		return p.compare(state, page), nil
	}
}

func (p *Phone) takePage(state *logState, page Page) {
	ops := make([]oplog.Op, len(page.Ops))
	for i, raw := range page.Ops {
		op, fault := oplog.Parse(raw)
		if fault != nil {
			panic(fault)
		}
		ops[i] = op
		state.sent[op.ID] = true
	}
	p.take(ops)
}

// compare tells whether the server lacks something that it once had, or gave us less than it has.
func (p *Phone) compare(state *logState, page Page) (again bool) {
	if p.broken.NoSafetyNet {
		return false
	}
	var digest oplog.Digest
	for id := range state.sent {
		digest.Toggle(id)
	}
	if digest.String() == page.Digest && int64(len(state.sent)) == page.Count {
		return false
	}
	return p.reset(state, page.Digest)
}
