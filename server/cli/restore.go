package cli

import (
	"context"
	"fmt"
	"log/slog"

	"rimside/store/sqlite"
)

// restore makes a data folder of a backup. It counts as a new log, so that phones send what the backup lacks.
func restore(c call) error {
	data, file, err := fileCommand(c, "restore", true)
	if err != nil {
		return err
	}
	if err := sqlite.Restore(context.Background(), file, data, bookOptions(c.textLog(slog.LevelWarn))); err != nil {
		return err
	}
	fmt.Fprintf(c.stdout, "The book of %s is restored in %s: start rimside, and phones that meet it send what it lacks\n", file, data)
	return nil
}
