package cli

import (
	"context"

	"rimside/store/sqlite"
)

// backup writes everything into one file, also beside a running server.
func backup(c call) error {
	return onBook(c, "backup", true, func(book *sqlite.Book, data, file string) error {
		if err := book.Backup(context.Background(), file); err != nil {
			return err
		}
		c.say("backup.done", "data", data, "file", file)
		return nil
	})
}
