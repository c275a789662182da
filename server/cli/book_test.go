package cli_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"
)

const testBook = "b00c0000000000000000000000000001"

func id(n int) string { return fmt.Sprintf("%032x", n) }

func opText(n int, set string) string {
	return `{"id":"` + id(n) + `","at":1790000000000,"kind":"tyre","rec":"7ec00000000000000000000000000000","set":` + set + `}`
}

// push sends ops and returns the ids that the server says are stored.
func push(url string, ops ...string) (stored []string, err error) {
	body := `{"book":"` + testBook + `","log":"","ops":[` + strings.Join(ops, ",") + `]}`
	response, err := http.Post(url+"/api/ops", "application/json", strings.NewReader(body))
	if err != nil {
		return nil, err
	}
	defer response.Body.Close()
	var answer struct{ Stored []string }
	if err := json.NewDecoder(response.Body).Decode(&answer); err != nil {
		return nil, err
	}
	if response.StatusCode != http.StatusOK {
		return nil, fmt.Errorf("status %d", response.StatusCode)
	}
	return answer.Stored, nil
}

// Whatever the server said is stored is there after it was killed in the middle of its work, fifty times.
func TestWhatWasAnsweredOutlivesAKill(t *testing.T) {
	data := t.TempDir()
	var acknowledged []string
	next := 0
	for round := range 50 {
		server := program(t, nil, "-addr", "127.0.0.1:0", "-data", data)
		url := serving(t, server)
		time.AfterFunc(time.Duration(rand.IntN(100))*time.Millisecond, func() { _ = server.Process.Kill() })
		for {
			next++
			stored, err := push(url, opText(next, `{"n":"`+strings.Repeat("x", next%2000)+`"}`))
			if err != nil {
				break // killed, before or after it had stored this one
			}
			acknowledged = append(acknowledged, stored...)
		}
		_ = server.Wait()
		if next > 100000 {
			t.Fatalf("round %d: the server cannot be killed", round)
		}
	}
	if len(acknowledged) < 50 {
		t.Fatalf("only %d ops were answered in 50 lives: nothing was put to the test", len(acknowledged))
	}
	if code, stdout, stderr := finish(t, program(t, nil, "verify", "-data", data)); code != 0 || !strings.Contains(stdout, "is sound") {
		t.Errorf("verify: exit code %d, %s %s", code, stdout, stderr)
	}
	file := filepath.Join(t.TempDir(), "book.ndjson")
	if code, _, stderr := finish(t, program(t, nil, "export", "-data", data, file)); code != 0 {
		t.Fatalf("export: exit code %d, %s", code, stderr)
	}
	exported, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	url := serving(t, program(t, nil, "-addr", "127.0.0.1:0", "-data", data))
	pulled := pullAll(t, url)
	for _, id := range acknowledged {
		if !bytes.Contains(exported, []byte(id)) || !strings.Contains(pulled, id) {
			t.Errorf("op %s was answered, and is lost", id)
		}
	}
	t.Logf("%d ops answered in 50 lives", len(acknowledged))
}

func pullAll(t *testing.T, url string) string {
	t.Helper()
	var all strings.Builder
	for since, more := int64(0), true; more; {
		_, body := get(t, fmt.Sprintf("%s/api/ops?since=%d", url, since))
		var page struct {
			Next int64
			More bool
		}
		if err := json.Unmarshal([]byte(body), &page); err != nil {
			t.Fatal(err)
		}
		all.WriteString(body)
		since, more = page.Next, page.More
	}
	return all.String()
}

// The system's own record of what the program does: before the answer goes out, it waited for the disk.
func TestTheDiskIsWaitedForBeforeTheAnswer(t *testing.T) {
	tracer, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("strace is not installed: that the server waits for the disk was not seen from outside (store/sqlite counts it from inside)")
	}
	trace := filepath.Join(t.TempDir(), "trace")
	if said, err := exec.Command(tracer, "-f", "-o", trace, "true").CombinedOutput(); err != nil {
		t.Skipf("this system does not let one program watch another, so the wait for the disk was not seen from outside: %s", said)
	}
	server := program(t, nil, "-addr", "127.0.0.1:0", "-data", t.TempDir())
	url := serving(t, server)
	watcher := exec.Command(tracer, "-f", "-s", "64", "-e", "trace=fsync,fdatasync,write", "-o", trace, "-p", strconv.Itoa(server.Process.Pid))
	attached, err := watcher.StderrPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := watcher.Start(); err != nil {
		t.Fatal(err)
	}
	defer func() { _ = watcher.Process.Kill() }()
	if line, err := bufio.NewReader(attached).ReadString('\n'); err != nil || !strings.Contains(line, "attached") {
		t.Skipf("this system does not let one program watch another, so the wait for the disk was not seen from outside: %s", line)
	}
	const marks = 5
	for n := range marks {
		if _, err := push(url, opText(n+1, `{"x":1}`)); err != nil {
			t.Fatal(err)
		}
	}
	_ = watcher.Process.Signal(os.Interrupt)
	_ = watcher.Wait()
	calls, err := os.ReadFile(trace)
	if err != nil {
		t.Fatal(err)
	}
	answers, synced := 0, 0
	for line := range strings.Lines(string(calls)) {
		switch {
		case strings.Contains(line, "sync(") && !strings.Contains(line, "resumed"), strings.Contains(line, "sync resumed"):
			synced++
		case strings.Contains(line, `"HTTP/1.1 200`):
			if synced == 0 {
				t.Errorf("an answer went out before the disk was waited for: %s", line)
			}
			answers, synced = answers+1, 0
		}
	}
	if answers < marks {
		t.Errorf("%d answers seen for %d pushes:\n%.2000s", answers, marks, calls)
	}
}

func TestCommandsOfTheBook(t *testing.T) {
	from, to, home := t.TempDir(), filepath.Join(t.TempDir(), "new"), t.TempDir()
	server := program(t, nil, "-addr", "127.0.0.1:0", "-data", from)
	url := serving(t, server)
	if _, err := push(url, opText(1, `{"name":"Ochre"}`), opText(2, `{"exact":9007199254740993}`)); err != nil {
		t.Fatal(err)
	}
	backup, file := filepath.Join(home, "all.tar"), filepath.Join(home, "book.ndjson")
	run := func(code int, says string, args ...string) {
		t.Helper()
		got, stdout, stderr := finish(t, program(t, nil, args...))
		if got != code || !strings.Contains(stdout+stderr, says) {
			t.Errorf("%v: exit code %d, want %d and %q; it said %s%s", args, got, code, says, stdout, stderr)
		}
	}
	run(0, "backed up", "backup", "-data", from, backup) // beside the running server
	run(0, "exported", "export", "-data", from, file)
	run(0, "is sound", "verify", "-data", from)
	run(0, "restored", "restore", "-data", to, backup)
	run(1, "already holds a book", "restore", "-data", to, backup)
	run(0, "0 entries are new here, 2 were known", "import", "-data", to, file)
	run(1, "no book in", "export", "-data", t.TempDir(), file)
	run(1, "no book in", "verify", "-data", t.TempDir())
	run(1, "not a backup", "restore", "-data", filepath.Join(t.TempDir(), "x"), file)
	run(2, "one file", "backup", "-data", from)
	run(2, "takes flags only", "verify", "-data", from, "now")
	run(1, "cannot be read", "import", "-data", to, filepath.Join(home, "absent"))
	empty := filepath.Join(t.TempDir(), "empty")
	run(0, "2 entries are new here", "import", "-data", empty, file)
	run(0, "is sound: 2 entries, 1 records", "verify", "-data", empty)
	for _, private := range []string{backup, file, filepath.Join(to, "rimside.sqlite")} {
		if facts, err := os.Stat(private); err != nil || facts.Mode().Perm() != 0o600 {
			t.Errorf("%s must be for its owner's eyes only: %v %v", private, facts, err)
		}
	}
	_, stdout, _ := finish(t, program(t, nil, "export", "-data", empty, "-"))
	if want, err := os.ReadFile(file); err != nil || stdout != string(want) {
		t.Errorf("an export of an import is the same file again: %q", stdout)
	}
	_, original := get(t, url+"/api/book")
	if _, restored := get(t, serving(t, program(t, nil, "-addr", "127.0.0.1:0", "-data", to))+"/api/book"); logOf(t, original) == logOf(t, restored) {
		t.Error("a restored book must be a new log, so that phones compare all they have with it")
	}
}

func logOf(t *testing.T, body string) string {
	t.Helper()
	var about struct{ Log string }
	if err := json.Unmarshal([]byte(body), &about); err != nil || len(about.Log) != 32 {
		t.Fatalf("%s: %v", body, err)
	}
	return about.Log
}

// All at once, two hundred phones bring what they have and fetch the rest: nobody is refused.
func TestTwoHundredPhonesAtOnce(t *testing.T) {
	const phones, each = 200, 20
	url := serving(t, program(t, nil, "-addr", "127.0.0.1:0", "-data", t.TempDir()))
	if _, err := push(url); err != nil {
		t.Fatal(err)
	}
	var waiting sync.WaitGroup
	faults := make(chan error, phones)
	for phone := range phones {
		waiting.Go(func() {
			var ops []string
			for n := range each {
				ops = append(ops, opText(phone*each+n+1, `{"x":1}`))
			}
			stored, err := push(url, ops...)
			if err == nil && len(stored) != each {
				err = fmt.Errorf("phone %d: %d of %d stored", phone, len(stored), each)
			}
			if err == nil {
				err = fetch(url + "/api/ops?limit=500")
			}
			faults <- err
		})
	}
	waiting.Wait()
	close(faults)
	for err := range faults {
		if err != nil {
			t.Error(err)
		}
	}
	if _, about := get(t, url+"/api/book"); !strings.Contains(about, fmt.Sprintf(`"count":%d`, phones*each)) {
		t.Errorf("%s", about)
	}
}

func fetch(url string) error {
	response, err := http.Get(url)
	if err != nil {
		return err
	}
	defer response.Body.Close()
	_, err = io.Copy(io.Discard, response.Body)
	if err == nil && response.StatusCode != http.StatusOK {
		err = fmt.Errorf("status %d", response.StatusCode)
	}
	return err
}

// BenchmarkPhones has two hundred phones live at their real rhythm, one meeting each thirty seconds, with an edit in
// every third; it reports how long a meeting's requests take.
func BenchmarkPhones(b *testing.B) {
	url := serving(b, program(b, nil, "-addr", "127.0.0.1:0", "-data", b.TempDir()))
	if _, err := push(url); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		times := live(b, url, 200, 30*time.Second)
		slices.Sort(times)
		b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, "ms-median")
		b.ReportMetric(float64(times[len(times)*99/100].Microseconds())/1000, "ms-p99")
	}
}

var benchOps int

func live(b *testing.B, url string, phones int, rhythm time.Duration) (times []time.Duration) {
	var mutex sync.Mutex
	var waiting sync.WaitGroup
	for phone := range phones {
		benchOps++
		number := benchOps
		waiting.Go(func() {
			time.Sleep(rhythm * time.Duration(phone) / time.Duration(phones)) // phones do not agree on when to begin
			start := time.Now()
			err := fetch(url + "/api/book")
			if err == nil && phone%3 == 0 {
				_, err = push(url, opText(number, `{"x":1}`))
			}
			if err == nil {
				err = fetch(url + "/api/ops?limit=500")
			}
			if err != nil {
				b.Error(err)
			}
			mutex.Lock()
			times = append(times, time.Since(start))
			mutex.Unlock()
		})
	}
	waiting.Wait()
	return times
}
