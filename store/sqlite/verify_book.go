package sqlite

import (
	"context"
	"errors"
	"fmt"

	lib "modernc.org/sqlite/lib"
)

// maxFindings is how many lines of a report are kept of each kind.
const maxFindings = 100

// Report is what Verify found. Problems mean that something is damaged; remarks are worth knowing.
type Report struct {
	Ops, Records, Blobs int
	Problems, Remarks   []string
	More                int // findings beyond those listed
}

func (r *Report) problem(format string, values ...any) { r.add(&r.Problems, format, values) }
func (r *Report) remark(format string, values ...any)  { r.add(&r.Remarks, format, values) }

func (r *Report) add(list *[]string, format string, values []any) {
	if len(*list) >= maxFindings {
		r.More++
		return
	}
	*list = append(*list, fmt.Sprintf(format, values...))
}

// Verify reads everything and tells what is not as it should be. The error is for what kept it from reading.
func (b *Book) Verify(ctx context.Context) (Report, error) {
	report := &Report{}
	err := b.verify(ctx, report)
	switch code(err) {
	case lib.SQLITE_CORRUPT, lib.SQLITE_NOTADB:
		report.problem("The database cannot be read to its end: %v", err)
		err = nil
	}
	if errors.Is(err, errUnusable) {
		report.problem("%v", err)
		err = nil
	}
	return *report, err
}

func (b *Book) verify(ctx context.Context, report *Report) error {
	tx, err := b.read.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer func() { _ = tx.Rollback() }() // it only read
	problems, err := checkFile(ctx, tx)
	if err != nil {
		return err
	}
	for _, problem := range problems {
		report.problem("%s", problem)
	}
	broken, err := brokenSeals(ctx, tx)
	if err != nil {
		return err
	}
	for _, problem := range broken {
		report.problem("%s", problem)
	}
	lost, err := hexColumn(ctx, tx, `SELECT id FROM damaged_ops`)
	if err != nil {
		return err
	}
	for _, id := range lost {
		report.problem("Op %s was damaged and taken out; a phone that has it brings it back by itself.", id)
	}
	for _, id := range b.renewedRows() {
		report.problem("What stood beside op %s was damaged; it was made anew from the op.", id)
	}
	row, err := readBookRow(ctx, tx)
	if err != nil {
		return err
	}
	if err := verifyOps(ctx, tx, row, report); err != nil {
		return err
	}
	if row.erases > row.erasesDone {
		report.remark("Traces of an erased record are still to be cleared; a running server does so within a minute.")
	}
	return b.verifyBlobs(ctx, tx, report)
}

// checkFile asks SQLite itself.
func checkFile(ctx context.Context, from rowsQuerier) (problems []string, err error) {
	said, err := texts(ctx, from, "PRAGMA integrity_check(20)")
	if err != nil {
		return nil, err
	}
	for _, problem := range said {
		if problem != "ok" {
			problems = append(problems, "The database: "+problem)
		}
	}
	dangling, err := texts(ctx, from, `SELECT 'row ' || coalesce(rowid, '?') || ' of ' || "table" FROM pragma_foreign_key_check`)
	for _, row := range dangling {
		problems = append(problems, "The database: "+row+" belongs to an op that is not there")
	}
	return problems, err
}

// texts reads a column of texts.
func texts(ctx context.Context, from rowsQuerier, query string) (list []string, err error) {
	rows, err := from.QueryContext(ctx, query)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var text string
		if err := rows.Scan(&text); err != nil {
			return nil, err
		}
		list = append(list, text)
	}
	return list, rows.Err()
}
