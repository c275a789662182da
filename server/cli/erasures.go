package cli

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log/slog"
	"time"

	"rimside/store/sqlite"
)

// erasures lists the erasures that wait until somebody agrees, beside a running server, and decides about all of them.
func erasures(c call) (err error) {
	var data string
	var agree, stop bool
	flags := flag.NewFlagSet("erasures", flag.ContinueOnError)
	flags.StringVar(&data, "data", "", "the folder `DIR` that holds the book; your own data folder if not given")
	flags.BoolVar(&agree, "agree", false, "let all of them pass: when the phone that erased comes by next, the records are gone everywhere")
	flags.BoolVar(&stop, "stop", false, "say no to all of them: the records stay here")
	operands, err := parse(c, flags)
	if err != nil {
		return err
	}
	if len(operands) > 0 || agree && stop {
		return usageError{"erasures takes -data, and one of -agree and -stop"}
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
	said := "Stopped: the records stay."
	if agree {
		said = "Agreed: the records are erased when the phone comes by next."
	}
	if len(held) > 0 {
		fmt.Fprintln(c.stdout, said)
	}
	return nil
}

func listHeld(ctx context.Context, c call, book *sqlite.Book, held []sqlite.HeldErasures) error {
	if len(held) == 0 {
		fmt.Fprintln(c.stdout, "No erasures wait.")
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
		name, state := names[each.Device], ""
		if name == "" {
			name = "A phone without a name"
		}
		if each.Stopped {
			state = ", stopped"
		}
		fmt.Fprintf(c.stdout, "%s wants to erase %d records, since %s%s\n", name, len(each.IDs), time.UnixMilli(each.Since).Format(time.DateTime), state)
	}
	return nil
}
