package cli

import (
	"context"
	"errors"
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
			return trouble("import.cannot", "why", err)
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
	c.say("import.done", "new", len(pushed.Stored), "known", len(pushed.Known))
	for _, each := range pushed.Rejected {
		c.say("import.refused", "id", each.ID, "why", each.Message)
	}
	if len(pushed.Rejected) > 0 {
		return trouble("import.some", "n", len(pushed.Rejected))
	}
	return nil
}
