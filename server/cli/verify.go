package cli

import (
	"context"

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
		c.say("verify.remark", "text", remark)
	}
	for _, each := range report.Problems {
		c.say("verify.problem", "text", each)
	}
	if len(report.Problems) > 0 {
		return trouble("verify.wrong", "n", len(report.Problems)+report.More, "data", data, "mend", trouble("mend"))
	}
	c.say("verify.sound", "data", data, "ops", report.Ops, "records", report.Records, "photos", report.Blobs)
	return nil
}
