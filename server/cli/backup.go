package cli

import (
	"context"
	"fmt"

	"rimside/store/sqlite"
)

// backup writes everything into one file, also beside a running server.
func backup(c call) error {
	return onBook(c, "backup", true, func(book *sqlite.Book, data, file string) error {
		if err := book.Backup(context.Background(), file); err != nil {
			return err
		}
		fmt.Fprintf(c.stdout, "The book in %s is backed up in %s: keep it where only you can read it\n", data, file)
		return nil
	})
}
