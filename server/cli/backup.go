package cli

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
)

// backup writes everything into one file, also beside a running server.
func backup(c call) (err error) {
	data, file, err := fileCommand(c, "backup", true)
	if err != nil {
		return err
	}
	book, err := openExisting(data, c.textLog(slog.LevelWarn))
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, book.Close()) }()
	if err := book.Backup(context.Background(), file); err != nil {
		return err
	}
	fmt.Fprintf(c.stdout, "The book in %s is backed up in %s: keep it where only you can read it\n", data, file)
	return nil
}
