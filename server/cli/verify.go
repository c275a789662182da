package cli

import (
	"context"
	"fmt"

	"rimside/store/sqlite"
)

// verify checks everything in a data folder: the file, the sums, every entry, every record, every photo.
func verify(c call) error {
	return onBook(c, "verify", false, func(book *sqlite.Book, data, _ string) error {
		report, err := book.Verify(context.Background())
		if err != nil {
			return err
		}
		return tell(c, data, report)
	})
}

// tell writes what was found; problems make the command fail.
func tell(c call, data string, report sqlite.Report) error {
	for _, remark := range report.Remarks {
		fmt.Fprintf(c.stdout, "remark: %s\n", remark)
	}
	for _, problem := range report.Problems {
		fmt.Fprintf(c.stdout, "wrong: %s\n", problem)
	}
	if len(report.Problems) > 0 {
		return fmt.Errorf("%d things are wrong in %s, see the list above. Entries and photos that are damaged a running server mends with the phones' help. For all else: %s", len(report.Problems)+report.More, data, sqlite.HowToMend)
	}
	fmt.Fprintf(c.stdout, "The book in %s is sound: %d entries, %d records, %d photos\n", data, report.Ops, report.Records, report.Blobs)
	return nil
}
