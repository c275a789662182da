package cli

import (
	"context"
	"errors"
	"flag"
	"log/slog"
	"strconv"

	"rimside/server/access"
)

// pair prints a code that lets one phone in, beside a running server. With -new-keys it changes what cookies are signed with.
func pair(c call) (err error) {
	var data string
	var newKeys bool
	flags := flag.NewFlagSet("pair", flag.ContinueOnError)
	flags.StringVar(&data, "data", "", "flag.book")
	flags.BoolVar(&newKeys, "new-keys", false, "flag.keys")
	operands, err := parse(c, flags)
	if err != nil {
		return err
	}
	if len(operands) > 0 {
		return misused("misused.flags", "command", "pair", "given", strconv.Quote(operands[0]))
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
	c.say("keys")
	return nil
}
