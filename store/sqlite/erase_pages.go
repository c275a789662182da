package sqlite

import (
	"context"
	"database/sql"
	"encoding/binary"
	"errors"
	"os"
)

// What SQLite leaves in a page when it packs the rows of a full one anew is not overwritten by secure_delete: it lies between
// the list of cells and the cells, or in free blocks among them. A VACUUM would write every page anew for it; here only what
// lies there is overwritten. The layout of pages is that of the file format, sqlite.org/fileformat2.html section 1.6.
// Overflow pages and those of the free list begin with a zero byte, as no file here has 16 million pages, and hold nothing
// that secure_delete leaves.

var errPage = errors.New("a page is not as the file format has it")

const (
	interiorIndex, interiorTable = 2, 5
	leafIndex, leafTable         = 10, 13
	fileHeader                   = 100 // bytes, on the first page
)

// clearUnused overwrites the unused bytes of a page, and tells whether any held something.
func clearUnused(number int64, page []byte) (held bool, err error) {
	head := 0
	if number == 1 {
		head = fileHeader
	}
	if len(page) < head+12 {
		return false, errPage
	}
	list := head + 8
	switch page[head] {
	case interiorIndex, interiorTable:
		list += 4
	case leafIndex, leafTable:
	default:
		return false, nil
	}
	cells, content := int(binary.BigEndian.Uint16(page[head+3:])), int(binary.BigEndian.Uint16(page[head+5:]))
	if content == 0 {
		content = 1 << 16
	}
	list += 2 * cells
	if list > content || content > len(page) {
		return false, errPage
	}
	held = wipe(page[list:content])
	for block := int(binary.BigEndian.Uint16(page[head+1:])); block != 0; {
		if block < content || block+4 > len(page) {
			return false, errPage
		}
		next, size := int(binary.BigEndian.Uint16(page[block:])), int(binary.BigEndian.Uint16(page[block+2:]))
		if size < 4 || block+size > len(page) || next != 0 && next <= block {
			return false, errPage
		}
		held = wipe(page[block+4:block+size]) || held
		block = next
	}
	return held, nil
}

func wipe(bytes []byte) (held bool) {
	for i, b := range bytes {
		if b != 0 {
			held, bytes[i] = true, 0
		}
	}
	return held
}

// pagesHolding lists the pages whose unused bytes hold something.
func pagesHolding(ctx context.Context, from rowsQuerier) (numbers []int64, err error) {
	rows, err := from.QueryContext(ctx, `SELECT pgno, data FROM sqlite_dbpage`)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var number int64
		var page []byte
		if err := rows.Scan(&number, &page); err != nil {
			return nil, err
		}
		held, err := clearUnused(number, page)
		if err != nil {
			return nil, err
		}
		if held {
			numbers = append(numbers, number)
		}
	}
	return numbers, rows.Err()
}

// pagesHoldingIn lists them for a file that nobody uses, which is much quicker.
func pagesHoldingIn(path string) (numbers []int64, err error) {
	content, err := os.ReadFile(path)
	if err != nil || len(content) < fileHeader {
		return nil, err
	}
	size := int(binary.BigEndian.Uint16(content[16:]))
	if size == 1 {
		size = 1 << 16
	}
	if size < 512 || len(content)%size != 0 {
		return nil, errPage
	}
	for number := int64(1); len(content) > 0; number++ {
		held, err := clearUnused(number, content[:size:size])
		if err != nil {
			return nil, err
		}
		if held {
			numbers = append(numbers, number)
		}
		content = content[size:]
	}
	return numbers, nil
}

// clearPagesIn overwrites the unused bytes of pages.
func clearPagesIn(tx *sql.Tx, numbers []int64) error {
	for _, number := range numbers {
		var page []byte
		err := tx.QueryRow(`SELECT data FROM sqlite_dbpage WHERE pgno = ?`, number).Scan(&page)
		if errors.Is(err, sql.ErrNoRows) {
			continue // the file has become shorter
		}
		if err != nil {
			return err
		}
		held, err := clearUnused(number, page)
		if err != nil {
			return err
		}
		if !held {
			continue
		}
		if _, err := tx.Exec(`UPDATE sqlite_dbpage SET data = ? WHERE pgno = ?`, page, number); err != nil {
			return err
		}
	}
	return nil
}
