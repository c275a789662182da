package sqlite

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"database/sql/driver"
	"encoding/binary"
	"fmt"
	"math"

	library "modernc.org/sqlite"
)

// SQL can ask for both sums, so that a table is sealed or checked where it lies.
func init() {
	library.MustRegisterDeterministicScalarFunction("sha256", 1, func(_ *library.FunctionContext, args []driver.Value) (driver.Value, error) {
		bytes, isBlob := args[0].([]byte)
		if !isBlob {
			return nil, nil
		}
		sum := sha256.Sum256(bytes)
		return sum[:], nil
	})
	library.MustRegisterDeterministicScalarFunction("row_sum", -1, func(_ *library.FunctionContext, args []driver.Value) (driver.Value, error) {
		return rowSum(args...), nil
	})
}

// rowSum is the sum of a row's values: the first 8 bytes of a SHA-256 over each with its type and its length. It is there to
// notice flipped bits; nobody who can write the file is kept from writing another sum.
func rowSum(values ...driver.Value) int64 {
	text := make([]byte, 0, 128)
	for _, value := range values {
		switch value := value.(type) {
		case []byte:
			text = append(binary.BigEndian.AppendUint64(append(text, 'b'), uint64(len(value))), value...)
		case string:
			text = append(binary.BigEndian.AppendUint64(append(text, 't'), uint64(len(value))), value...)
		case int64:
			text = binary.BigEndian.AppendUint64(append(text, 'i'), uint64(value))
		case bool:
			number := uint64(0)
			if value {
				number = 1
			}
			text = binary.BigEndian.AppendUint64(append(text, 'i'), number)
		case float64:
			text = binary.BigEndian.AppendUint64(append(text, 'f'), math.Float64bits(value))
		default:
			text = append(text, 'n')
		}
	}
	sum := sha256.Sum256(text)
	return int64(binary.BigEndian.Uint64(sum[:8]))
}

// sumsSince is the first format in which rows have sums.
const sumsSince = 3

// sealed says, for each small table, which sum its rows must have.
var sealed = []struct{ table, name, sum string }{
	{"book", "'of this book'", "row_sum(server, log, book, count, digest, changes, erases, erases_done, stale_pages)"},
	{"devices", "device", "row_sum(device, label, paired_at, seen_at, revoked)"},
	{"secrets", "name", "row_sum(name, made_at, value)"},
	{"dropped_blobs", "hex(mark)", "row_sum(mark)"},
}

// brokenSeals lists the rows of the small tables that are not what was written.
func brokenSeals(ctx context.Context, from rowsQuerier) (problems []string, err error) {
	for _, each := range sealed {
		rows, err := texts(ctx, from, fmt.Sprintf("SELECT %s FROM %s WHERE sum IS NOT %s LIMIT %d", each.name, each.table, each.sum, maxFindings))
		if err != nil {
			return nil, err
		}
		for _, row := range rows {
			problems = append(problems, fmt.Sprintf("The row %s of the table %s is not what was written there.", row, each.table))
		}
	}
	return problems, nil
}

// seal writes the sums of a small table's rows anew, after they were changed on purpose. where names the rows.
func seal(tx *sql.Tx, table, where string, args ...any) error {
	for _, each := range sealed {
		if each.table == table {
			_, err := tx.Exec("UPDATE "+table+" SET sum = "+each.sum+" WHERE "+where, args...)
			return err
		}
	}
	return fmt.Errorf("the table %s has no sums", table)
}
