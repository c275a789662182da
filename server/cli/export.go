package cli

import (
	"context"
	"errors"
	"io"
	"os"

	"rimside/store/sqlite"
)

// export writes the log as text, one op a line. The file "-" is stdout.
func export(c call) error {
	return onBook(c, "export", true, func(book *sqlite.Book, data, file string) error {
		if file == "-" {
			return book.Export(context.Background(), c.stdout)
		}
		if err := writeWhole(file, func(out io.Writer) error { return book.Export(context.Background(), out) }); err != nil {
			return trouble("export.cannot", "why", err)
		}
		c.say("export.done", "data", data, "file", file)
		return nil
	})
}

// writeWhole writes a file under another name first, so that a file of this name is never half written.
func writeWhole(file string, write func(io.Writer) error) (err error) {
	part := file + ".part"
	out, err := os.OpenFile(part, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o600)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = os.Remove(part)
		}
	}()
	if err := errors.Join(write(out), out.Sync(), out.Close()); err != nil {
		return err
	}
	return os.Rename(part, file)
}
