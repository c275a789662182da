package sqlite

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"

	"rimside/store/oplog"
)

// fileVersion is the version of the exported file's form.
const fileVersion = 1

// Export writes the whole log as lines of JSON: first whose it is, then an op a line. It reads page by page, so that
// somebody who fetches it slowly keeps nobody waiting; ops that arrive meanwhile are left out.
func (b *Book) Export(ctx context.Context, to io.Writer) error {
	row, err := readBookRow(ctx, b.read)
	if err != nil {
		return err
	}
	out := bufio.NewWriterSize(to, 64<<10)
	if _, err := fmt.Fprintf(out, "{\"rimside\":%d,\"book\":%q}\n", fileVersion, row.book); err != nil {
		return err
	}
	for since := int64(0); since < row.newest; {
		page, err := b.Pull(ctx, row.book, row.log, since, oplog.MaxPush)
		if err != nil {
			return err
		}
		if page.Next == since {
			return fmt.Errorf("no op after number %d, of %d: %w", since, row.newest, errUnusable)
		}
		since = page.Next
		if err := writeLines(out, page.Ops); err != nil {
			return err
		}
	}
	return out.Flush()
}

// writeLines writes an op a line. One that was sent on several lines is put on one; its values keep their digits.
func writeLines(out *bufio.Writer, ops []json.RawMessage) error {
	var line bytes.Buffer
	for _, op := range ops {
		line.Reset()
		if bytes.ContainsAny(op, "\r\n") {
			if err := json.Compact(&line, op); err != nil {
				return err
			}
		} else {
			line.Write(op)
		}
		line.WriteByte('\n')
		if _, err := out.Write(line.Bytes()); err != nil {
			return err
		}
	}
	return nil
}
