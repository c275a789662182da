package cli_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"rimside/store/sqlite"
)

// advice is every text that tells a person to do something with files, by a part of it, and what happens to whoever does so.
var advice = map[string]func(t *testing.T){
	sqlite.HowToMend:                          doMend,
	"Choose another folder with -data DIR":    doChooseAnother,
	"or choose another folder with -data DIR": doChooseAnother,
	"Choose an empty folder with -data DIR":   doChooseEmpty,
	"choose another with -data DIR":           doChooseAnother,
	"name another with -data DIR":             doChooseAnother,
	"a folder of its own with -data DIR":      doChooseAnother,
	"say with -data DIR":                      doChooseAnother,
	"Sag mit -data DIR":                       doChooseAnother,
	"name the folder that holds one":          doChooseAnother,
	"Delete the file blobs/":                  doDeleteErased,
	"Use another one":                         doUseAnotherBackup,
	"Choose a file written by rimside backup": doUseAnotherBackup,
	"Choose one that starts with":             doImportAnExport,
	"Make room on the server's disk":          nil, // store/sqlite fills it: TestFaultsOfTheServer
	"Make the folder writable":                doMakeWritable,
}

func TestWhatTextsTellToDoWithFilesWorks(t *testing.T) {
	for text, do := range advice {
		if do != nil {
			t.Run(strings.ReplaceAll(text[:min(len(text), 40)], "/", " "), do)
		}
	}
}

var toDo = regexp.MustCompile(`-data DIR[^ \]]|-data DIR$|\bMove |Delete the file|Use another|Choose (a|an|one|another) |Make (room|the folder)|copy the newest|restore a backup`)

// Nothing is told to do with files that the table above lacks.
func TestEveryTextThatTellsToDoSomethingIsKnown(t *testing.T) {
	found := 0
	for _, root := range []string{"../../store", "../../server"} {
		err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			if err != nil {
				return err
			}
			ast.Inspect(file, func(node ast.Node) bool {
				literal, isLiteral := node.(*ast.BasicLit)
				if !isLiteral || literal.Kind != token.STRING {
					return true
				}
				text, _ := strconv.Unquote(literal.Value)
				if strings.HasPrefix(text, "usage:") || !toDo.MatchString(text) {
					return true
				}
				if found++; !isKnownAdvice(text) {
					t.Errorf("%s tells people %q, and no test does it", path, text)
				}
				return true
			})
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if found < 10 {
		t.Errorf("only %d texts were found: this test shows nothing", found)
	}
}

func isKnownAdvice(text string) bool {
	for known := range advice {
		if strings.Contains(text, known) || strings.Contains(known, text) && len(text) > 20 {
			return true
		}
	}
	return strings.Contains(text, "needs one file") || strings.Contains(text, "Make it smaller")
}

// aKilledBook is a folder as a kill left it, with 450 ops of which a backup has 200. The log's id before is given too.
func aKilledBook(t *testing.T) (data, backup, log string) {
	t.Helper()
	data, backup = t.TempDir(), filepath.Join(t.TempDir(), "book.backup")
	server := program(t, nil, "-addr", "127.0.0.1:0", "-data", data)
	url := serving(t, server)
	pushMany(t, url, 1, 200)
	if code, _, stderr := finish(t, program(t, nil, "backup", "-data", data, backup)); code != 0 {
		t.Fatal(stderr)
	}
	pushMany(t, url, 201, 450)
	_, body := get(t, url+"/api/book")
	if err := server.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = server.Wait()
	if info, err := os.Stat(filepath.Join(data, "rimside.sqlite-wal")); err != nil || info.Size() == 0 {
		t.Fatalf("the kill left no write-ahead log (%v): this test shows nothing", err)
	}
	return data, backup, logOf(t, body)
}

func pushMany(t *testing.T, url string, from, to int) {
	t.Helper()
	var ops []string
	for n := from; n <= to; n++ {
		ops = append(ops, opText(n, `{"n":`+strconv.Itoa(n)+`}`))
	}
	if stored, err := push(url, ops...); err != nil || len(stored) != len(ops) {
		t.Fatalf("%d ops stored (%v), want %d", len(stored), err, len(ops))
	}
}

// holds starts a server on a folder and wants so many ops there, in a log that is (or is not) the one of before.
func holds(t *testing.T, data string, ops int, log string, same bool) {
	t.Helper()
	if code, stdout, stderr := finish(t, program(t, nil, "verify", "-data", data)); code != 0 {
		t.Errorf("verify: %s %s", stdout, stderr)
	}
	url := serving(t, program(t, nil, "-addr", "127.0.0.1:0", "-data", data))
	_, body := get(t, url+"/api/book")
	if !strings.Contains(body, `"count":`+strconv.Itoa(ops)+",") || (logOf(t, body) == log) != same {
		t.Errorf("the book is %s, want %d ops; the log before was %s", body, ops, log)
	}
}

// doMend moves away what it is told to, and restores; and once more, with the newest copy.
func doMend(t *testing.T) {
	data, backup, log := aKilledBook(t)
	moveAway(t, data, regexp.MustCompile(`rimside\.sqlite(-wal|-shm)?`).FindAllString(sqlite.HowToMend, 3)...)
	if code, _, stderr := finish(t, program(t, nil, "restore", "-data", data, backup)); code != 0 {
		t.Fatal(stderr)
	}
	holds(t, data, 200, log, false)

	data, _, log = aKilledBook(t)
	copied := aCopyOf(t, data)
	moveAway(t, data, "rimside.sqlite", "rimside.sqlite-wal", "rimside.sqlite-shm")
	putFile(t, filepath.Join(data, "rimside.sqlite"), copied)
	holds(t, data, 450, log, true)
}

func moveAway(t *testing.T, data string, names ...string) {
	t.Helper()
	if names[0] != "rimside.sqlite" {
		t.Fatalf("the text names %q", names)
	}
	away := t.TempDir()
	for _, name := range names {
		if err := os.Rename(filepath.Join(data, name), filepath.Join(away, name)); err != nil && !os.IsNotExist(err) {
			t.Fatal(err)
		}
	}
}

// aCopyOf is what the folder copies would hold.
func aCopyOf(t *testing.T, data string) []byte {
	t.Helper()
	work := t.TempDir()
	if err := os.CopyFS(work, os.DirFS(data)); err != nil {
		t.Fatal(err)
	}
	backup := filepath.Join(t.TempDir(), "b")
	if code, _, stderr := finish(t, program(t, nil, "backup", "-data", work, backup)); code != 0 {
		t.Fatal(stderr)
	}
	content, err := os.ReadFile(backup)
	if err != nil {
		t.Fatal(err)
	}
	const header = 512 // of a tar's first member, which is the database
	size, err := strconv.ParseInt(strings.Trim(string(content[124:136]), "\x00 "), 8, 64)
	if err != nil {
		t.Fatal(err)
	}
	return content[header : header+size]
}

func putFile(t *testing.T, path string, content []byte) {
	t.Helper()
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
}

// Whoever moves away, or replaces, the database alone leaves its write-ahead log behind: it must not be read into another.
func TestALogThatWasLeftBehindIsNotReadIntoAnotherFile(t *testing.T) {
	t.Run("a restore", func(t *testing.T) {
		data, backup, log := aKilledBook(t)
		moveAway(t, data, "rimside.sqlite")
		if code, _, stderr := finish(t, program(t, nil, "restore", "-data", data, backup)); code != 0 {
			t.Fatal(stderr)
		}
		holds(t, data, 200, log, false)
	})
	t.Run("a copy in its place", func(t *testing.T) {
		data, backup, log := aKilledBook(t)
		older := t.TempDir()
		if code, _, stderr := finish(t, program(t, nil, "restore", "-data", older, backup)); code != 0 {
			t.Fatal(stderr)
		}
		content, err := os.ReadFile(filepath.Join(older, "rimside.sqlite"))
		if err != nil {
			t.Fatal(err)
		}
		putFile(t, filepath.Join(data, "rimside.sqlite"), content)
		holds(t, data, 200, log, false)
	})
	t.Run("nothing in its place", func(t *testing.T) {
		data, _, log := aKilledBook(t)
		moveAway(t, data, "rimside.sqlite")
		holdsNothing(t, data, log)
	})
}

func holdsNothing(t *testing.T, data, log string) {
	t.Helper()
	url := serving(t, program(t, nil, "-addr", "127.0.0.1:0", "-data", data))
	if _, body := get(t, url+"/api/book"); !strings.Contains(body, `"count":0,`) || logOf(t, body) == log {
		t.Errorf("the book is %s", body)
	}
}

func doChooseAnother(t *testing.T) {
	holdsNothing(t, filepath.Join(t.TempDir(), "another"), "")
}

func doChooseEmpty(t *testing.T) {
	data, backup, log := aKilledBook(t)
	if code, _, stderr := finish(t, program(t, nil, "restore", "-data", data, backup)); code != 1 || !strings.Contains(stderr, "Choose an empty folder") {
		t.Errorf("over a book: exit code %d, %s", code, stderr)
	}
	empty := t.TempDir()
	if code, _, stderr := finish(t, program(t, nil, "restore", "-data", empty, backup)); code != 0 {
		t.Fatal(stderr)
	}
	holds(t, empty, 200, log, false)
	holds(t, data, 450, log, true) // and the one that was in the way is as it was
}

func doUseAnotherBackup(t *testing.T) {
	_, backup, log := aKilledBook(t)
	cut := filepath.Join(t.TempDir(), "cut")
	content, err := os.ReadFile(backup)
	if err != nil {
		t.Fatal(err)
	}
	putFile(t, cut, content[:len(content)/2])
	home := filepath.Join(t.TempDir(), "home")
	if code, _, stderr := finish(t, program(t, nil, "restore", "-data", home, cut)); code != 1 {
		t.Errorf("half a backup: exit code %d, %s", code, stderr)
	}
	if code, _, stderr := finish(t, program(t, nil, "restore", "-data", home, backup)); code != 0 {
		t.Fatal(stderr)
	}
	holds(t, home, 200, log, false)
}

func doImportAnExport(t *testing.T) {
	data, _, _ := aKilledBook(t)
	file := filepath.Join(t.TempDir(), "book.ndjson")
	for _, args := range [][]string{{"export", "-data", data, file}, {"import", "-data", filepath.Join(t.TempDir(), "new"), file}} {
		if code, stdout, stderr := finish(t, program(t, nil, args...)); code != 0 {
			t.Errorf("%q: %s %s", args, stdout, stderr)
		}
	}
}

// doDeleteErased puts an erased photo's file back, and deletes the file that verify names.
func doDeleteErased(t *testing.T) {
	data := t.TempDir()
	if err := os.CopyFS(data, os.DirFS("../../store/sqlite/testdata/book-2")); err != nil {
		t.Fatal(err)
	}
	photo := "\xff\xd8\xff\xe0a rim, erased"
	const hash = "4f607c3bb8f238f27f908382001cbd94083eadd56c50f2b3a52a3e19a3f544d0"
	if err := os.MkdirAll(filepath.Join(data, "blobs", hash[:2]), 0o700); err != nil {
		t.Fatal(err)
	}
	putFile(t, filepath.Join(data, "blobs", hash[:2], hash), []byte(photo))
	code, stdout, _ := finish(t, program(t, nil, "verify", "-data", data))
	named := regexp.MustCompile(`Delete the file (\S+)\.`).FindStringSubmatch(stdout)
	if code != 1 || named == nil {
		t.Fatalf("verify: exit code %d, %s", code, stdout)
	}
	if err := os.Remove(filepath.Join(data, filepath.FromSlash(named[1]))); err != nil {
		t.Fatal(err)
	}
	if code, stdout, stderr := finish(t, program(t, nil, "verify", "-data", data)); code != 0 {
		t.Errorf("then: exit code %d, %s %s", code, stdout, stderr)
	}
}

func doMakeWritable(t *testing.T) {
	if os.Getuid() == 0 {
		t.Skip("the administrator may write anywhere")
	}
	data := t.TempDir()
	if err := os.Chmod(data, 0o500); err != nil {
		t.Fatal(err)
	}
	if code, _, _ := finish(t, program(t, nil, "-addr", "127.0.0.1:0", "-data", data)); code != 1 {
		t.Errorf("exit code %d", code)
	}
	if err := os.Chmod(data, 0o700); err != nil {
		t.Fatal(err)
	}
	holdsNothing(t, data, "")
}
