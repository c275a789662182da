package sqlite

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"rimside/store/fault"
	"rimside/store/oplog"
)

var (
	errNotExport   = fault.New(fault.Invalid, "not_rimside", "This is not a file that Rimside exported. Choose one that starts with {\"rimside\":1.")
	errNewerExport = fault.New(fault.Invalid, "newer_format", "This file was exported by a newer Rimside. Update this one, then import again.")
)

// maxBatchBytes bounds how much of a file is held at a time.
const maxBatchBytes = 8 << 20

// Import stores the ops of an exported file. It reads line by line and stores batch by batch: one that breaks off is
// continued by importing the file again. A line that cannot be taken is rejected on its own, with its number.
func (b *Book) Import(ctx context.Context, from io.Reader, via string) (Pushed, error) {
	return b.importAll(ctx, from, via, false)
}

// ImportByOwner is Import for whoever owns the data folder: what erases in bulk is not held back.
func (b *Book) ImportByOwner(ctx context.Context, from io.Reader) (Pushed, error) {
	return b.importAll(ctx, from, "", true)
}

func (b *Book) importAll(ctx context.Context, from io.Reader, via string, byOwner bool) (Pushed, error) {
	lines := lineReader{from: bufio.NewReaderSize(from, 64<<10)}
	book, err := readHeader(&lines)
	if err != nil {
		return Pushed{}, err
	}
	all := Pushed{Stored: []string{}, Known: []string{}, Rejected: []oplog.Rejection{}}
	var untidy bool
	defer func() {
		if untidy {
			b.tidyBeside(true) // once for the whole file
		}
	}()
	for more := true; more; {
		var raws []json.RawMessage
		var numbers []int
		raws, numbers, more, err = readBatch(&lines, &all)
		if err != nil {
			return all, err
		}
		if err := b.importBatch(ctx, book, raws, numbers, via, byOwner, &all, &untidy); err != nil {
			return all, err
		}
	}
	return all, nil
}

// importBatch stores a batch; the first one also settles whose book it is.
func (b *Book) importBatch(ctx context.Context, book string, raws []json.RawMessage, numbers []int, via string, byOwner bool, all *Pushed, untidy *bool) error {
	if book == "" && len(raws) == 0 {
		row, err := readBookRow(ctx, b.read)
		all.Book, all.Log = row.book, row.log
		return err
	}
	batch := parseAll(raws)
	batch.byOwner = byOwner
	pushed, err := b.store(ctx, book, batch, via)
	if err != nil {
		return err
	}
	*untidy = *untidy || batch.untidy
	b.shortener.poke(b.dir)
	all.Book, all.Log = pushed.Book, pushed.Log
	all.Stored = append(all.Stored, pushed.Stored...)
	all.Known = append(all.Known, pushed.Known...)
	for i, fault := range pushed.Rejected {
		fault.Message = fmt.Sprintf("Line %d: %s", numbers[batch.rejectedAt[i]], fault.Message)
		all.Rejected = append(all.Rejected, fault)
	}
	return nil
}

// readHeader reads whose book the file holds.
func readHeader(lines *lineReader) (book string, err error) {
	first, fits, err := lines.next()
	if err != nil && !errors.Is(err, io.EOF) {
		return "", err
	}
	var header struct {
		Rimside int    `json:"rimside"`
		Book    string `json:"book"`
	}
	first = bytes.TrimPrefix(first, []byte("\xef\xbb\xbf")) // some editors put it there
	if !fits || json.Unmarshal(first, &header) != nil || header.Rimside < 1 || header.Book != "" && !oplog.IsID(header.Book) {
		return "", errNotExport
	}
	if header.Rimside > fileVersion {
		return "", errNewerExport
	}
	return header.Book, nil
}

// readBatch reads as many lines as one push takes, with their numbers. Lines too long to be an op are rejected here.
func readBatch(lines *lineReader, all *Pushed) (raws []json.RawMessage, numbers []int, more bool, err error) {
	for size := 0; len(raws) < oplog.MaxPush && size < maxBatchBytes; {
		line, fits, err := lines.next()
		if err != nil && !errors.Is(err, io.EOF) {
			return nil, nil, false, err
		}
		switch {
		case !fits:
			all.Rejected = append(all.Rejected, oplog.Rejection{Code: oplog.TooLarge,
				Message: fmt.Sprintf("Line %d: This entry is larger than 2 MiB, the most one entry may hold.", lines.number)})
		case len(line) > 0:
			raws = append(raws, bytes.Clone(line))
			numbers = append(numbers, lines.number)
			size += len(line)
		}
		if err != nil {
			return raws, numbers, false, nil
		}
	}
	return raws, numbers, true, nil
}

// lineReader reads lines that may be of any length in bounded memory.
type lineReader struct {
	from   *bufio.Reader
	number int // of the line read last, from 1
	buffer []byte
}

// next reads a line, without the white space around it. fits is false for one longer than any op: it was skipped. The
// error of the last line is io.EOF.
func (l *lineReader) next() (line []byte, fits bool, err error) {
	l.number++
	l.buffer, fits = l.buffer[:0], true
	for {
		part, err := l.from.ReadSlice('\n')
		if fits = fits && len(l.buffer)+len(part) <= oplog.MaxOpBytes+2; fits {
			l.buffer = append(l.buffer, part...)
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return bytes.TrimSpace(l.buffer), fits, err
		}
	}
}
