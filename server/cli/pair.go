package cli

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log/slog"

	"rimside/server/access"
)

// pair prints a code that lets one phone in, beside a running server. With -new-keys it changes what cookies are signed with.
func pair(c call) (err error) {
	var data string
	var newKeys bool
	flags := flag.NewFlagSet("pair", flag.ContinueOnError)
	flags.StringVar(&data, "data", "", "the folder `DIR` that holds the book; your own data folder if not given")
	flags.BoolVar(&newKeys, "new-keys", false, "sign sessions with a new key from the next start on; done twice in a row, every phone has to be paired anew")
	operands, err := parse(c, flags)
	if err != nil {
		return err
	}
	if len(operands) > 0 {
		return usageError{fmt.Sprintf("pair takes flags only, not %q", operands[0])}
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
	if !newKeys {
		return printCode(ctx, c, book)
	}
	if err := access.Rotate(ctx, book, book.Now()); err != nil {
		return err
	}
	fmt.Fprintln(c.stdout, "A new key signs the sessions from the next start of the server on. Make sibling servers anew from a backup.")
	return nil
}
