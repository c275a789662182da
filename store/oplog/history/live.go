package history

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"slices"

	"rimside/store/oplog"
)

// Live lets phones and servers live through a history, has them all meet at the end, and says what went wrong.
func Live(h History, servers []Server, broken Broken) error {
	life := life{history: h, servers: servers, written: map[string]bool{}, erased: map[string]bool{}}
	for _, off := range h.Phones {
		life.phones = append(life.phones, newPhone(off, broken))
	}
	for n, step := range h.Steps {
		if err := life.step(step); err != nil {
			return fmt.Errorf("step %d %+v: %w", n, step, err)
		}
	}
	return life.end()
}

type life struct {
	history History
	phones  []*Phone
	servers []Server
	written map[string]bool     // ids of all ops ever
	erased  map[string]bool     // records
	values  map[string][]string // record -> values it ever had
}

func (l *life) step(step Step) error {
	phone, rec := l.phones[step.Phone], RecID(step.Rec)
	shown := phone.state(rec)
	exists := len(phone.of(rec)) > 0 && !shown.Erased
	switch step.Do {
	case Edit:
		return l.edit(phone, rec, shown, step)
	case Decide:
		for _, name := range shown.Conflicts {
			if field, found := shown.Fields[name]; found {
				l.note(phone.write(step.Now, rec, "tyre", map[string]any{name: field.Winner.Value}, map[string][]string{name: all(&field)}, nil))
			}
		}
	case Remove, Restore:
		if exists {
			l.hide(phone, rec, shown, step)
		}
	case Erase:
		if exists {
			l.note(phone.write(step.Now, rec, oplog.KindErase, map[string]any{"kind": "tyre"}, nil, nil))
			l.erased[rec] = true
		}
	case Meet:
		err := phone.meet(step.Server, &flaky{Server: l.servers[step.Server], lost: step.Lost}, l.history.Batch)
		if !errors.Is(err, errLost) {
			return err
		}
	case Wipe:
		return l.servers[step.Server].Wipe()
	case Keep:
		return l.servers[step.Server].Keep()
	case PutBack:
		return l.servers[step.Server].PutBack()
	}
	return nil
}

func (l *life) note(op oplog.Op) { l.written[op.ID] = true }

func all(field *oplog.Field) []string {
	if field == nil {
		return nil
	}
	ids := slices.Clone(field.Winner.Ops)
	for _, other := range field.Siblings {
		ids = append(ids, other.Ops...)
	}
	return ids
}

// edit sets fields, and looks whether the phone then shows what was typed.
func (l *life) edit(phone *Phone, rec string, shown oplog.State, step Step) error {
	set, bases := map[string]any{}, map[string][]string{}
	for name, value := range step.Set {
		set[name] = value
		if field, found := shown.Fields[name]; found {
			bases[name] = field.Winner.Ops
		}
		if l.values == nil {
			l.values = map[string][]string{}
		}
		l.values[rec] = append(l.values[rec], value)
	}
	l.note(phone.write(step.Now, rec, "tyre", set, bases, nil))
	after := phone.state(rec)
	for name, value := range step.Set {
		if got := string(after.Fields[name].Winner.Value); !after.Erased && got != `"`+value+`"` {
			return fmt.Errorf("the author typed %q and sees %s", value, got)
		}
	}
	return nil
}

func (l *life) hide(phone *Phone, rec string, shown oplog.State, step Step) {
	bases := map[string][]string{}
	if ids := all(shown.Deletion); len(ids) > 0 {
		bases[oplog.FieldDeleted] = ids
	}
	if step.Do == Restore {
		if shown.Deleted {
			l.note(phone.write(step.Now, rec, "tyre", map[string]any{oplog.FieldDeleted: false}, bases, nil))
		}
		return
	}
	seen := []string{}
	for _, field := range shown.Fields {
		seen = append(seen, all(&field)...)
	}
	l.note(phone.write(step.Now, rec, "tyre", map[string]any{oplog.FieldDeleted: true}, bases, seen))
}

// end has everybody meet everybody until nothing is left to tell, then compares.
func (l *life) end() error {
	for round := range 3 {
		for number, server := range l.servers {
			for i, phone := range l.phones {
				if err := phone.meet(number, server, l.history.Batch); err != nil {
					return fmt.Errorf("at the end, round %d, phone %d, server %d: %w", round, i, number, err)
				}
			}
		}
	}
	if resets := l.resets(); l.history.Calm() && resets > 0 {
		return fmt.Errorf("%d times everything was exchanged anew, though no server lost anything", resets)
	}
	return l.compare()
}

func (l *life) resets() (count int) {
	for _, phone := range l.phones {
		count += phone.Resets
	}
	return count
}

// compare wants every op at every node, the same picture everywhere, and no value of an erased record anywhere.
func (l *life) compare() error {
	first := l.phones[0]
	for i, phone := range l.phones {
		if err := l.checkHeld(fmt.Sprintf("phone %d", i), phone.ops); err != nil {
			return err
		}
		for rec := range Records {
			id := RecID(rec)
			if got, want := Picture(phone.state(id)), Picture(first.state(id)); got != want {
				return fmt.Errorf("record %d: phone %d shows %s, phone 0 %s", rec, i, got, want)
			}
		}
	}
	for i, server := range l.servers {
		ops, err := server.Ops()
		if err != nil {
			return err
		}
		if err := l.checkHeld(fmt.Sprintf("server %d", i), ops); err != nil {
			return err
		}
	}
	return nil
}

func (l *life) checkHeld(who string, ops []oplog.Op) error {
	held := map[string]bool{}
	var bytesOf = map[string][]byte{}
	for _, op := range ops {
		held[op.ID] = true
		bytesOf[op.Rec] = append(bytesOf[op.Rec], op.Raw...)
	}
	for id := range l.written {
		if !held[id] {
			return fmt.Errorf("%s lacks op %s", who, id)
		}
	}
	if len(held) != len(l.written) {
		return fmt.Errorf("%s holds %d ops, %d were written", who, len(held), len(l.written))
	}
	for rec := range l.erased {
		for _, value := range l.values[rec] {
			if bytes.Contains(bytesOf[rec], []byte(value)) {
				return fmt.Errorf("%s still holds %q of the erased record %s", who, value, rec)
			}
		}
	}
	return nil
}

// Picture writes a state so that two can be compared.
func Picture(s oplog.State) string {
	text := fmt.Sprintf("%s erased=%v deleted=%v newest=%d clashes=%q unseen=%q", s.Kind, s.Erased, s.Deleted, s.Newest, s.Conflicts, s.Unseen)
	for _, name := range slices.Sorted(maps.Keys(s.Fields)) {
		text += fmt.Sprintf(" %s=%s", name, s.Fields[name].Winner.Value)
		for _, other := range s.Fields[name].Siblings {
			text += fmt.Sprintf("|%s", other.Value)
		}
	}
	return text
}
