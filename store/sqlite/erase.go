package sqlite

import (
	"database/sql"

	"rimside/store/oplog"
)

// eraseRecords takes the values out of all stored ops of the records. The ops keep their places in the log.
func eraseRecords(tx *sql.Tx, recs []string) error {
	for _, rec := range recs {
		if err := eraseRecord(tx, unhex(rec)); err != nil {
			return err
		}
	}
	return nil
}

func eraseRecord(tx *sql.Tx, rec []byte) error {
	if _, err := tx.Exec(`INSERT OR IGNORE INTO erased_records (rec) VALUES (?)`, rec); err != nil {
		return err
	}
	live, err := liveOps(tx, rec)
	if err != nil {
		return err
	}
	for _, seq := range live {
		if err := eraseOp(tx, seq); err != nil {
			return err
		}
	}
	return nil
}

// liveOps lists a record's ops by place, not by content: they are rewritten one at a time.
func liveOps(tx *sql.Tx, rec []byte) (seqs []int64, err error) {
	rows, err := tx.Query(`SELECT seq FROM ops WHERE rec = ? AND erased = 0`, rec)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var seq int64
		if err := rows.Scan(&seq); err != nil {
			return nil, err
		}
		seqs = append(seqs, seq)
	}
	return seqs, rows.Err()
}

func eraseOp(tx *sql.Tx, seq int64) error {
	var raw []byte
	if err := tx.QueryRow(`SELECT bytes FROM ops WHERE seq = ?`, seq).Scan(&raw); err != nil {
		return err
	}
	op, fault := oplog.Parse(raw)
	if fault != nil {
		return fault
	}
	erased := op.Erase()
	if !erased.Erased {
		return nil // the erase op itself stays as it is
	}
	if _, err := tx.Exec(`UPDATE ops SET bytes = ?, erased = 1 WHERE seq = ?`, erased.Raw, seq); err != nil {
		return err
	}
	if _, err := tx.Exec(`DELETE FROM named_blobs WHERE seq = ?`, seq); err != nil {
		return err
	}
	return dropBlobs(tx, oplog.Blobs(op))
}

// dropBlobs lets files go that no live op names any more.
func dropBlobs(tx *sql.Tx, hashes []string) error {
	for _, hash := range hashes {
		if err := dropBlob(tx, unhex(hash)); err != nil {
			return err
		}
	}
	return nil
}
