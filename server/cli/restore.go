package cli

import (
	"context"
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
	c.say("restore.done", "file", file, "data", data)
	return nil
}
