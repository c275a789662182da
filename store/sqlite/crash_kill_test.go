//go:build unix

package sqlite_test

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
	"time"

	"rimside/store/oplog"
	"rimside/store/sqlite"
)

// writerFolder names the folder in which this program, started once more, writes until it is killed.
const writerFolder = "RIMSIDE_TEST_WRITER"

func TestMain(m *testing.M) {
	if dir := os.Getenv(writerFolder); dir != "" {
		fmt.Fprintln(os.Stderr, writeForEver(context.Background(), dir))
		os.Exit(1)
	}
	os.Exit(m.Run())
}

// writeForEver pushes, copies and erases. It tells on stdout what was answered: the record and the op it stored, and
// later that the record was erased.
func writeForEver(ctx context.Context, dir string) error {
	settings, hour := options(), 0
	settings.Now = func() time.Time { return noon.Add(time.Duration(hour) * time.Hour) }
	book, err := sqlite.Open(dir, settings)
	if err != nil {
		return err
	}
	for ; ; hour++ {
		rec, id := oplog.NewID(), oplog.NewID()
		text := strings.Repeat("-", hour*37%3000)
		if _, err := book.Push(ctx, aBook, "", []json.RawMessage{op(id, rec, "note", `{"text":"`+secret+" of "+rec+text+`"}`)}, ""); err != nil {
			return err
		}
		fmt.Println("stored", rec, id)
		if hour%5 > 0 {
			continue
		}
		if err := book.Tick(ctx); err != nil {
			return err
		}
		if hour%10 > 0 {
			continue
		}
		if _, err := book.Push(ctx, aBook, "", []json.RawMessage{eraseOp(rec)}, ""); err != nil {
			return err
		}
		fmt.Println("erased", rec, id)
	}
}

// writer is the other process and what it answered so far.
type writer struct {
	command *exec.Cmd
	lines   *bufio.Scanner
	stored  map[string]string // op -> its record
	erased  map[string]bool   // records
}

func startWriter(t *testing.T, dir string) *writer {
	t.Helper()
	command := exec.Command(os.Args[0])
	command.Env = append(os.Environ(), writerFolder+"="+dir)
	command.Stderr = os.Stderr
	out, err := command.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = command.Process.Kill()
		_ = command.Wait()
	})
	return &writer{command: command, lines: bufio.NewScanner(out), stored: map[string]string{}, erased: map[string]bool{}}
}

// read takes in that many answers, or all that are left.
func (w *writer) read(answers int) (got int) {
	for ; got < answers && w.lines.Scan(); got++ {
		words := strings.Fields(w.lines.Text())
		if words[0] == "erased" {
			w.erased[words[1]] = true
		}
		w.stored[words[2]] = words[1]
	}
	return got
}

// check opens the folder and wants everything there that was answered, and nothing of what was erased.
func (w *writer) check(t *testing.T, dir string) {
	t.Helper()
	book := open(t, dir)
	healthy(t, book)
	here, erased := map[string]bool{}, map[string]bool{}
	for _, raw := range pullAll(t, book) {
		op, fault := oplog.Parse(raw)
		if fault != nil {
			t.Fatal(fault)
		}
		here[op.ID] = true
		erased[op.Rec] = erased[op.Rec] || op.Erases()
	}
	for id := range w.stored {
		if !here[id] {
			t.Errorf("op %s was answered and is not here", id)
		}
	}
	for rec := range w.erased {
		if !erased[rec] {
			t.Errorf("the erase of record %s was answered and is not here", rec)
		}
	}
	for rec, is := range erased {
		if found := holding(t, dir, secret+" of "+rec); is && len(found) > 0 {
			t.Errorf("values of the erased record %s stand in %v", rec, found)
		}
	}
}

// A process killed at any moment has what it answered, and its start clears the traces of erases.
func TestKilled(t *testing.T) {
	dir := t.TempDir()
	for round := range 5 {
		w := startWriter(t, dir)
		if got := w.read(5 + 7*round); got == 0 {
			t.Fatal("the other process wrote nothing")
		}
		time.Sleep(time.Duration(round*7) * time.Millisecond)
		if err := w.command.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		w.read(1 << 30)
		_ = w.command.Wait()
		w.check(t, dir)
	}
}

// A folder copied while its process stands still, between any two of its steps, is a whole book.
func TestFolderCopiedInMidair(t *testing.T) {
	dir := t.TempDir()
	w := startWriter(t, dir)
	for range 4 {
		if got := w.read(17); got != 17 {
			t.Fatal("the other process ended by itself")
		}
		if err := w.command.Process.Signal(syscall.SIGSTOP); err != nil {
			t.Fatal(err)
		}
		copied := t.TempDir()
		if err := os.CopyFS(copied, os.DirFS(dir)); err != nil {
			t.Fatal(err)
		}
		if err := w.command.Process.Signal(syscall.SIGCONT); err != nil {
			t.Fatal(err)
		}
		w.check(t, copied)
	}
}
