package sqlite

import (
	"database/sql"

	"rimside/store/oplog"
)

// eraseRecords takes the values out of all stored ops of the records, and tells how many ops it rewrote. They keep their
// places in the log.
func eraseRecords(tx *sql.Tx, recs []string) (rewritten int, err error) {
	for _, rec := range recs {
		if _, err := tx.Exec(`INSERT OR IGNORE INTO erased_records (rec) VALUES (?)`, unhex(rec)); err != nil {
			return rewritten, err
		}
		live, err := liveOps(tx, unhex(rec))
		if err != nil {
			return rewritten, err
		}
		for _, seq := range live {
			erased, err := eraseOp(tx, seq)
			if err != nil {
				return rewritten, err
			}
			if erased {
				rewritten++
			}
		}
	}
	return rewritten, nil
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

// eraseOp rewrites one op, unless it is the erase itself, which stays as it is.
func eraseOp(tx *sql.Tx, seq int64) (rewritten bool, err error) {
	var raw []byte
	if err := tx.QueryRow(`SELECT bytes FROM ops WHERE seq = ?`, seq).Scan(&raw); err != nil {
		return false, err
	}
	op, fault := oplog.Parse(raw)
	if fault != nil {
		return false, fault
	}
	if op.Kind == oplog.KindErase {
		return false, nil
	}
	if _, err := tx.Exec(`UPDATE ops SET bytes = ?, erased = 1 WHERE seq = ?`, op.Erase().Raw, seq); err != nil {
		return false, err
	}
	if _, err := tx.Exec(`DELETE FROM named_blobs WHERE seq = ?`, seq); err != nil {
		return false, err
	}
	return true, dropBlobs(tx, oplog.Blobs(op))
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
