package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"os"
)

// importFile takes an exported file in. The file "-" is stdin.
func importFile(c call) (err error) {
	data, file, err := fileCommand(c, "import", true)
	if err != nil {
		return err
	}
	var from io.Reader = os.Stdin
	if file != "-" {
		opened, err := os.Open(file)
		if err != nil {
			return fmt.Errorf("the file cannot be read: %w", err)
		}
		defer opened.Close()
		from = opened
	}
	if err := makeDataDir(data); err != nil {
		return err
	}
	book, err := openBook(data, c.textLog(slog.LevelWarn))
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, book.Close()) }()
	pushed, err := book.ImportByOwner(context.Background(), from)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.stdout, "%d entries are new here, %d were known\n", len(pushed.Stored), len(pushed.Known))
	for _, each := range pushed.Rejected {
		fmt.Fprintf(c.stdout, "refused: %s %s\n", each.ID, each.Message)
	}
	if len(pushed.Rejected) > 0 {
		return fmt.Errorf("%d entries were refused, all others are in: see the list above", len(pushed.Rejected))
	}
	return nil
}
