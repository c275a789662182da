package sqlite

import (
	"database/sql"
	"encoding/hex"

	"rimside/store/oplog"
)

// eraser erases in a database file of a format: copies may be older than this program.
type eraser struct {
	tx      *sql.Tx
	format  int
	removed []string // ids of ops that were damaged: of those nothing can be kept
}

// records takes the values out of all stored ops of the records, and tells how many ops it rewrote. They keep their
// places in the log.
func (e *eraser) records(recs []string) (rewritten int, err error) {
	for _, rec := range recs {
		if _, err := e.tx.Exec(`INSERT OR IGNORE INTO erased_records (rec) VALUES (?)`, unhex(rec)); err != nil {
			return rewritten, err
		}
		if e.format >= sumsSince {
			if _, err := e.tx.Exec(`DELETE FROM damaged_ops WHERE rec = ?`, unhex(rec)); err != nil {
				return rewritten, err
			}
		}
		if e.format >= sumsSince { // a phone's name is known beside the log too
			if _, err := e.tx.Exec(`UPDATE devices SET label = '' WHERE device = ?`, rec); err != nil {
				return rewritten, err
			}
			if err := seal(e.tx, "devices", "device = ?", rec); err != nil {
				return rewritten, err
			}
		}
		if e.format >= heldSince {
			if _, err := e.tx.Exec(letGo, unhex(rec)); err != nil {
				return rewritten, err
			}
		}
		live, err := liveOps(e.tx, unhex(rec))
		if err != nil {
			return rewritten, err
		}
		for _, seq := range live {
			erased, err := e.op(seq)
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

// op rewrites one op, unless it is the erase itself, which stays as it is.
func (e *eraser) op(seq int64) (rewritten bool, err error) {
	tx := e.tx
	var raw []byte
	if err := tx.QueryRow(`SELECT bytes FROM ops WHERE seq = ?`, seq).Scan(&raw); err != nil {
		return false, err
	}
	op, fault := oplog.Parse(raw)
	if fault != nil {
		return true, e.remove(seq)
	}
	if op.Kind == oplog.KindErase {
		return false, nil
	}
	if _, err := tx.Exec(`UPDATE ops SET bytes = ?, erased = 1 WHERE seq = ?`, op.Erase().Raw, seq); err != nil {
		return false, err
	}
	if e.format >= sumsSince {
		if _, err := tx.Exec(`UPDATE ops SET sha256 = sha256(bytes), sum = row_sum(id, rec, erased, via, received_at) WHERE seq = ?`, seq); err != nil {
			return false, err
		}
	}
	if _, err := tx.Exec(`DELETE FROM named_blobs WHERE seq = ?`, seq); err != nil {
		return false, err
	}
	return true, e.dropBlobs(oplog.Blobs(op))
}

// dropBlobs lets files go that no live op names any more.
func (e eraser) dropBlobs(hashes []string) error {
	for _, hash := range hashes {
		if err := e.dropBlob(unhex(hash)); err != nil {
			return err
		}
	}
	return nil
}

// remove takes an op out that cannot be read: whoever holds it sends its frame.
func (e *eraser) remove(seq int64) error {
	var id []byte
	if err := e.tx.QueryRow(`SELECT id FROM ops WHERE seq = ?`, seq).Scan(&id); err != nil {
		return err
	}
	e.removed = append(e.removed, hex.EncodeToString(id))
	if _, err := e.tx.Exec(`DELETE FROM named_blobs WHERE seq = ?`, seq); err != nil {
		return err
	}
	_, err := e.tx.Exec(`DELETE FROM ops WHERE seq = ?`, seq)
	return err
}
