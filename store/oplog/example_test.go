package oplog_test

import (
	"fmt"

	"rimside/store/oplog"
)

// Two phones change a tyre's width without knowing of each other: the later value is the winner, the other a sibling. A third
// op that names both in its bases settles the conflict.
func ExampleMerge() {
	parse := func(text string) oplog.Op {
		op, fault := oplog.Parse([]byte(text))
		if fault != nil {
			panic(fault)
		}
		return op
	}
	const ana, ben, both = "a0000000000000000000000000000000", "b0000000000000000000000000000000", "c0000000000000000000000000000000"
	const tyre = "70000000000000000000000000000000"
	ops := []oplog.Op{
		parse(`{"id":"` + ana + `","at":1780000000000,"kind":"tyre","rec":"` + tyre + `","set":{"measured_mm":41.5}}`),
		parse(`{"id":"` + ben + `","at":1780000000001,"kind":"tyre","rec":"` + tyre + `","set":{"measured_mm":42}}`),
	}
	state := oplog.Merge(ops)
	width := state.Fields["measured_mm"]
	fmt.Printf("winner %s, sibling %s, in conflict: %v\n", width.Winner.Value, width.Siblings[0].Value, state.Conflicts)

	ops = append(ops, parse(`{"id":"`+both+`","at":1780000000002,"kind":"tyre","rec":"`+tyre+`","set":{"measured_mm":41.5},"bases":{"measured_mm":["`+ana+`","`+ben+`"]}}`))
	state = oplog.Merge(ops)
	fmt.Printf("winner %s, in conflict: %v\n", state.Fields["measured_mm"].Winner.Value, state.Conflicts)
	// Output:
	// winner 42, sibling 41.5, in conflict: [measured_mm]
	// winner 41.5, in conflict: []
}
