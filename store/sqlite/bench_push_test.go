package sqlite_test

import (
	"database/sql"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"net/url"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"rimside/store/oplog"
	"rimside/store/sqlite"
)

var sizes = []int{1_000, 10_000, 100_000}

// BenchmarkPush fills an empty book, 500 ops a push.
func BenchmarkPush(b *testing.B) {
	eachSize(b, func(b *testing.B, ops []json.RawMessage) {
		for b.Loop() {
			b.StopTimer()
			book := open(b, b.TempDir())
			b.StartTimer()
			fill(b, book, ops)
		}
	})
}

// BenchmarkPull reads a whole book, 500 ops a page.
func BenchmarkPull(b *testing.B) {
	eachSize(b, func(b *testing.B, ops []json.RawMessage) {
		book := open(b, b.TempDir())
		fill(b, book, ops)
		for b.Loop() {
			if got := len(pullAll(b, book)); got != len(ops) {
				b.Fatalf("%d ops pulled, want %d", got, len(ops))
			}
		}
	})
}

// BenchmarkVerify checks a whole book.
func BenchmarkVerify(b *testing.B) {
	eachSize(b, func(b *testing.B, ops []json.RawMessage) {
		book := open(b, b.TempDir())
		fill(b, book, ops)
		for b.Loop() {
			if report := healthy(b, book); report.Ops != len(ops) {
				b.Fatalf("%d ops verified, want %d", report.Ops, len(ops))
			}
		}
	})
}

// BenchmarkErase erases a record of one op from a book of some size, with all that is cleared afterwards.
func BenchmarkErase(b *testing.B) {
	eachSize(b, func(b *testing.B, ops []json.RawMessage) {
		book := open(b, b.TempDir())
		fill(b, book, ops)
		for b.Loop() {
			rec := oplog.NewID()
			push(b, book, op(oplog.NewID(), rec, "note", `{"text":"x"}`))
			push(b, book, eraseOp(rec))
		}
	})
}

// BenchmarkOpen opens and closes a book that is there.
func BenchmarkOpen(b *testing.B) {
	eachSize(b, func(b *testing.B, ops []json.RawMessage) {
		dir := b.TempDir()
		fill(b, open(b, dir), ops)
		for b.Loop() {
			book, err := sqlite.Open(dir, options())
			if err != nil {
				b.Fatal(err)
			}
			if err := book.Close(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// BenchmarkAgainstBareDriver compares pushes with the same rows inserted by the driver alone: one prepared statement,
// one transaction for 500 rows. Both take turns; the medians of five rounds count.
func BenchmarkAgainstBareDriver(b *testing.B) {
	const rounds, rows = 5, 10_000
	b.Log("file system:", fileSystem(b.TempDir()))
	var ours, bare []float64
	for b.Loop() {
		for range rounds {
			ops := someOps(rows)
			ours = append(ours, perSecond(rows, func() func() {
				book := open(b, b.TempDir())
				return func() { fill(b, book, ops) }
			}()))
			bare = append(bare, perSecond(rows, func() func() {
				db := bareDriver(b)
				return func() { insertBare(b, db, ops) }
			}()))
		}
	}
	b.ReportMetric(median(ours), "rows/s")
	b.ReportMetric(median(bare), "bare-rows/s")
	b.ReportMetric(100*median(ours)/median(bare), "%-of-bare")
}

func eachSize(b *testing.B, run func(*testing.B, []json.RawMessage)) {
	for _, size := range sizes {
		b.Run(fmt.Sprint(size), func(b *testing.B) {
			ops := someOps(size)
			b.ReportAllocs()
			run(b, ops)
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*size), "ns/row")
		})
	}
}

// someOps makes small ops as a phone writes them, five to a record.
func someOps(count int) []json.RawMessage {
	chance := rand.New(rand.NewPCG(1, uint64(count)))
	id := func() string { return fmt.Sprintf("%016x%016x", chance.Uint64(), chance.Uint64()) }
	ops := make([]json.RawMessage, count)
	var rec, last string
	device := id()
	for i := range ops {
		if i%5 == 0 {
			rec, last = id(), id()
		}
		next := id()
		ops[i] = json.RawMessage(fmt.Sprintf(`{"id":"%s","at":%d,"kind":"tyre","rec":"%s","set":{"measured_mm":%d.5},"bases":{"measured_mm":["%s"]},"author":"","device":"%s","schema":1}`,
			next, noon.UnixMilli()+int64(i), rec, 20+i%40, last, device))
		last = next
	}
	return ops
}

func fill(b *testing.B, book *sqlite.Book, ops []json.RawMessage) {
	for chunk := range slices.Chunk(ops, oplog.MaxPush) {
		if pushed := push(b, book, chunk...); len(pushed.Stored) != len(chunk) {
			b.Fatalf("%d ops stored, want %d", len(pushed.Stored), len(chunk))
		}
	}
}

func perSecond(rows int, run func()) float64 {
	start := time.Now()
	run()
	return float64(rows) / time.Since(start).Seconds()
}

func median(values []float64) float64 {
	slices.Sort(values)
	return values[len(values)/2]
}

// bareDriver makes a table and index of the shape that the log has, with the same safety.
func bareDriver(b *testing.B) *sql.DB {
	settings := url.Values{"_txlock": {"immediate"}, "_pragma": {"busy_timeout(5000)", "journal_mode(WAL)", "synchronous(FULL)", "foreign_keys(1)", "secure_delete(1)"}}
	db, err := sql.Open("sqlite", "file:"+filepath.Join(b.TempDir(), "bare.sqlite")+"?"+settings.Encode())
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { _ = db.Close() })
	db.SetMaxOpenConns(1)
	_, err = db.Exec(`CREATE TABLE ops (seq INTEGER PRIMARY KEY, id BLOB NOT NULL UNIQUE, rec BLOB NOT NULL, erased INTEGER NOT NULL,
		via TEXT NOT NULL, received_at INTEGER NOT NULL, bytes BLOB NOT NULL) STRICT; CREATE INDEX ops_by_rec ON ops (rec)`)
	if err != nil {
		b.Fatal(err)
	}
	return db
}

func insertBare(b *testing.B, db *sql.DB, ops []json.RawMessage) {
	insert, err := db.Prepare(`INSERT INTO ops (id, rec, erased, via, received_at, bytes) VALUES (?, ?, ?, ?, ?, ?)`)
	if err != nil {
		b.Fatal(err)
	}
	defer insert.Close()
	for chunk := range slices.Chunk(ops, oplog.MaxPush) {
		tx, err := db.Begin()
		if err != nil {
			b.Fatal(err)
		}
		in := tx.Stmt(insert)
		for _, op := range chunk {
			// The ids stand at fixed places in these ops.
			if _, err := in.Exec([]byte(op[7:23]), []byte(op[82:98]), false, "a-phone", noon.UnixMilli(), []byte(op)); err != nil {
				b.Fatal(err)
			}
		}
		if err := tx.Commit(); err != nil {
			b.Fatal(err)
		}
	}
}

func fileSystem(dir string) string {
	said, err := exec.Command("stat", "-f", "-c", "%T", dir).Output()
	if err != nil {
		return "unknown"
	}
	return strings.TrimSpace(string(said))
}
