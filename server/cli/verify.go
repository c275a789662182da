package cli

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
)

// verify checks everything in a data folder: the file, the sums, every entry, every record, every photo.
func verify(c call) (err error) {
	data, _, err := fileCommand(c, "verify", false)
	if err != nil {
		return err
	}
	book, err := openExisting(data, c.textLog(slog.LevelWarn))
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, book.Close()) }()
	report, err := book.Verify(context.Background())
	if err != nil {
		return err
	}
	for _, remark := range report.Remarks {
		fmt.Fprintf(c.stdout, "remark: %s\n", remark)
	}
	for _, problem := range report.Problems {
		fmt.Fprintf(c.stdout, "wrong: %s\n", problem)
	}
	if len(report.Problems) > 0 {
		return fmt.Errorf("%d things are wrong in %s: stop the server, then restore a backup, or put the newest sound file of its folder copies in the place of rimside.sqlite", len(report.Problems)+report.More, data)
	}
	fmt.Fprintf(c.stdout, "The book in %s is sound: %d entries, %d records, %d photos\n", data, report.Ops, report.Records, report.Blobs)
	return nil
}
