package journey

import (
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"rimside/store/oplog"
	"rimside/store/oplog/history"
)

// The phone's real log and sync live through random histories, against real servers. What every phone shows at the end
// is held against this program's own merging of what the servers hold.

func TestHistoriesInMemory(t *testing.T) { liveThrough(t, "memory", histories(t, 100), 40) }

func TestHistoriesInIndexedDB(t *testing.T) { liveThrough(t, "idb", 30, 40) }

// histories is how many are lived through: as many as fit into every run, or what RIMSIDE_HISTORIES says (300 take five
// minutes on two cores).
func histories(t *testing.T, usual int) int {
	t.Helper()
	text := os.Getenv("RIMSIDE_HISTORIES")
	if text == "" {
		return usual
	}
	count, err := strconv.Atoi(text)
	if err != nil || count < 1 {
		t.Fatalf("RIMSIDE_HISTORIES cannot be %q: give a number from 1", text)
	}
	return count
}

func liveThrough(t *testing.T, store string, count, steps int) {
	servers := []*Server{startInMemory(t), startInMemory(t), startInMemory(t)}
	p, stage := liveStage(t, servers...)
	mishaps := 0
	for seed := range count {
		h := history.Draw(rand.New(rand.NewPCG(uint64(seed), uint64(len(store)))), history.Limits{Steps: steps, Mishaps: true})
		if !h.Calm() {
			mishaps++
		}
		life := life{t: t, page: p, stage: stage, servers: servers[:h.Servers], history: h, kept: map[int]string{}, waiting: []map[string]any{}}
		if err := life.live(store, fmt.Sprintf("b00c%028d", seed)); err != nil {
			t.Fatalf("history %d: %v\n%s", seed, err, h)
		}
	}
	Eval[string](p, `live.drop().then(() => "")`)
	if mishaps < count/10 {
		t.Errorf("only %d of %d histories had a mishap", mishaps, count)
	}
}

// liveStage is a page in which phones live, before servers that are reached by a forwarder.
func liveStage(t testing.TB, servers ...*Server) (*Page, *Forwarder) {
	t.Helper()
	stage := Forward(t, servers...)
	script := bundled(t, "sync", "live.test.ts")
	stage.others = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/live.js" {
			w.Header().Set("Content-Type", "text/javascript; charset=utf-8")
			_, _ = w.Write(script)
			return
		}
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		_, _ = io.WriteString(w, `<!doctype html><html lang="en"><head><link rel="icon" href="data:,"><script src="/live.js"></script></head><body></body></html>`)
	})
	return OpenBrowser(t).Open(stage.URL), stage
}

// startInMemory starts a server whose data lies in memory where the system has such a folder: hundreds of lives would wait
// for the disk otherwise. What the disk does is another test's matter.
func startInMemory(t testing.TB) *Server {
	t.Helper()
	dir, err := os.MkdirTemp("/dev/shm", "rimside-journey-")
	if err != nil {
		return StartServer(t)
	}
	s := &Server{t: t, binary: binary(t), data: dir, addr: freeAddress(t)}
	s.Start()
	t.Cleanup(func() {
		s.Stop()
		_ = os.RemoveAll(dir)
	})
	return s
}

// life is one history on the stage.
type life struct {
	t       *testing.T
	page    *Page
	stage   *Forwarder
	servers []*Server
	history history.History
	kept    map[int]string // server -> the folder's copy
	waiting []map[string]any
}

func (l *life) live(store, book string) error {
	for _, server := range l.servers {
		server.wipe()
	}
	Eval[string](l.page, fmt.Sprintf(`(live.begin(%q, %s, %q), "")`, book, written(l.history.Phones), store))
	l.stage.page.Store(int64(l.history.Batch))
	for _, step := range l.history.Steps {
		switch step.Do {
		case history.Wipe, history.Keep, history.PutBack:
			if err := l.flush(); err != nil {
				return err
			}
			l.mishap(step)
		default:
			l.waiting = append(l.waiting, map[string]any{
				"do": step.Do, "now": step.Now, "phone": step.Phone, "server": step.Server, "rec": history.RecID(step.Rec), "set": step.Set, "lost": step.Lost,
			})
		}
	}
	if err := l.flush(); err != nil {
		return err
	}
	return l.end()
}

// flush has the phones do what they are to do.
func (l *life) flush() error {
	if wrong := Eval[string](l.page, "live.steps("+written(l.waiting)+")"); wrong != "" {
		return fmt.Errorf("%s", wrong)
	}
	l.waiting = []map[string]any{}
	return nil
}

func (l *life) mishap(step history.Step) {
	server := l.servers[step.Server]
	switch step.Do {
	case history.Wipe:
		server.wipe()
	case history.Keep:
		server.Stop()
		l.kept[step.Server] = l.t.TempDir()
		copyFolder(l.t, l.kept[step.Server], server.data)
		server.Start()
	case history.PutBack:
		if kept, found := l.kept[step.Server]; found {
			server.Stop()
			empty(l.t, server.data)
			copyFolder(l.t, server.data, kept)
			server.Start()
		}
	}
}

// end compares what all phones show with what the servers' ops come to.
func (l *life) end() error {
	l.stage.page.Store(0) // what is left to tell goes in pages of the usual size
	var recs []string
	for n := range history.Records {
		recs = append(recs, history.RecID(n))
	}
	told := Eval[struct {
		Wrong    string
		Pictures [][]string
		Texts    [][]string
	}](l.page, fmt.Sprintf("live.end(%d, %s)", len(l.servers), written(recs)))
	if told.Wrong != "" {
		return fmt.Errorf("at the end: %s", told.Wrong)
	}
	for i, server := range l.servers {
		ops := server.ops(l.t)
		for phone, pictures := range told.Pictures {
			if got, want := idsOf(l.t, told.Texts[phone]), idsOf(l.t, ops); got != want {
				return fmt.Errorf("phone %d holds other ops than server %d:\n%s\n%s", phone, i, got, want)
			}
			for n, rec := range recs {
				if want := merged(l.t, ops, rec); pictures[n] != want {
					return fmt.Errorf("phone %d shows %s, server %d %s", phone, pictures[n], i, want)
				}
			}
		}
		if err := noErasedValues(l.t, l.history, append(told.Texts, ops)); err != nil {
			return err
		}
	}
	return nil
}

// noErasedValues wants no value of an erased record in any holder's ops.
func noErasedValues(t *testing.T, h history.History, holders [][]string) error {
	t.Helper()
	erased := map[string]bool{}
	for _, text := range holders[0] {
		if op := parsed(t, text); op.Erases() {
			erased[op.Rec] = true
		}
	}
	for _, step := range h.Steps {
		if !erased[history.RecID(step.Rec)] {
			continue
		}
		for _, value := range step.Set {
			for who, texts := range holders {
				if strings.Contains(strings.Join(texts, "\n"), value) {
					return fmt.Errorf("holder %d still has %q of an erased record", who, value)
				}
			}
		}
	}
	return nil
}

func merged(t *testing.T, texts []string, rec string) string {
	t.Helper()
	var ops []oplog.Op
	for _, text := range texts {
		if op := parsed(t, text); op.Rec == rec {
			ops = append(ops, op)
		}
	}
	if len(ops) == 0 {
		return "nothing"
	}
	return history.Picture(oplog.Merge(ops))
}

func written(value any) string {
	text, err := json.Marshal(value)
	if err != nil {
		panic(err) // numbers and texts always marshal
	}
	return string(text)
}

func empty(t testing.TB, dir string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, entry := range entries {
		if err := os.RemoveAll(filepath.Join(dir, entry.Name())); err != nil {
			t.Fatal(err)
		}
	}
}

func copyFolder(t *testing.T, to, from string) {
	t.Helper()
	if err := os.CopyFS(to, os.DirFS(from)); err != nil {
		t.Fatal(err)
	}
}
