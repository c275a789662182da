package cli

import (
	"context"
	"errors"
	"flag"
	"log/slog"
	"time"

	"rimside/store/sqlite"
)

// erasures lists the erasures that wait until somebody agrees, beside a running server, and decides about all of them.
func erasures(c call) (err error) {
	var data string
	var agree, stop bool
	flags := flag.NewFlagSet("erasures", flag.ContinueOnError)
	flags.StringVar(&data, "data", "", "flag.book")
	flags.BoolVar(&agree, "agree", false, "flag.agree")
	flags.BoolVar(&stop, "stop", false, "flag.stop")
	operands, err := parse(c, flags)
	if err != nil {
		return err
	}
	if len(operands) > 0 || agree && stop {
		return misused("erasures.misused")
	}
	if data == "" {
		if data, err = userDataDir(c.env); err != nil {
			return err
		}
	}
	book, err := openExisting(data, c.textLog(slog.LevelWarn))
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, book.Close()) }()
	ctx := context.Background()
	held, err := book.Held(ctx, "")
	if err != nil {
		return err
	}
	if err := listHeld(ctx, c, book, held); err != nil || !agree && !stop {
		return err
	}
	if err := book.Vote(ctx, held, agree); err != nil {
		return err
	}
	decided := "erasures.stopped"
	if agree {
		decided = "erasures.agreed"
	}
	if len(held) > 0 {
		c.say(decided)
	}
	return nil
}

func listHeld(ctx context.Context, c call, book *sqlite.Book, held []sqlite.HeldErasures) error {
	if len(held) == 0 {
		c.say("erasures.none")
		return nil
	}
	devices, err := book.Devices(ctx)
	if err != nil {
		return err
	}
	names := map[string]string{}
	for _, each := range devices {
		names[each.ID] = each.Label
	}
	for _, each := range held {
		name, state := names[each.Device], "erasures.waits"
		if name == "" {
			name = c.text("erasures.unnamed")
		}
		if each.Stopped {
			state = "erasures.halted"
		}
		c.say(state, "name", name, "n", len(each.IDs), "since", time.UnixMilli(each.Since).Format(time.DateTime))
	}
	return nil
}
