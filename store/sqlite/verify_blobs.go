package sqlite

import (
	"context"
	"database/sql"
)

// verifyBlobs checks the files, and that those which entries name are here. A missing one is no damage: photos are sent
// after the entries that name them.
func (b *Book) verifyBlobs(ctx context.Context, tx *sql.Tx, report *Report) error {
	damaged, err := b.blobs.VerifyAll()
	if err != nil {
		return err
	}
	for _, hash := range damaged {
		report.problem("Photo %s is damaged. A running server sets it aside within the day, and a phone that has it sends it again.", hash)
	}
	list, err := b.blobs.List()
	if err != nil {
		return err
	}
	here := make(map[string]bool, len(list))
	for _, hash := range list {
		here[hash] = true
	}
	report.Blobs = len(list)
	named, err := hexColumn(ctx, tx, `SELECT DISTINCT hash FROM named_blobs`)
	if err != nil {
		return err
	}
	for _, hash := range named {
		if !here[hash] {
			report.remark("Photo %s is not here yet: the phone that took it has not sent it.", hash)
		}
		delete(here, hash)
	}
	for hash := range here {
		if err := b.verifyUnnamed(ctx, tx, hash, report); err != nil {
			return err
		}
	}
	return nil
}

// verifyUnnamed judges a file that no entry names.
func (b *Book) verifyUnnamed(ctx context.Context, tx *sql.Tx, hash string, report *Report) error {
	var dropped, leaving bool
	err := tx.QueryRowContext(ctx, `SELECT EXISTS (SELECT 1 FROM dropped_blobs WHERE mark = ?), EXISTS (SELECT 1 FROM leaving_blobs WHERE hash = unhex(?))`,
		markOf(unhex(hash)), hash).Scan(&dropped, &leaving)
	switch {
	case err != nil:
		return err
	case leaving:
		report.remark("Photo %s was erased and is still to be deleted.", hash)
	case dropped:
		report.problem("Photo %s was erased, but its file is still here. Delete the file blobs/%s/%s.", hash, hash[:2], hash)
	default:
		report.remark("No entry names photo %s.", hash)
	}
	return nil
}
