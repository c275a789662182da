package cli

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
)

func siteOf(t *testing.T, dist map[string]string) map[string][]byte {
	t.Helper()
	app := fstest.MapFS{}
	for name, content := range dist {
		app[name] = &fstest.MapFile{Data: []byte(content)}
	}
	files, err := siteFiles(app)
	if err != nil {
		t.Fatal(err)
	}
	return files
}

var madeUpApp = map[string]string{
	".keep": "", "index.html": "<html><head><meta charset=utf-8></head></html>", "index.html.br": "x", "sw.js": "1", "sw.js.gz": "x",
	"recover/index.html": "<html><head></head></html>", "a/11/main.js": "2", "a/11/main.js.br": "y",
}

func TestSitePagesCarryThePolicyFirst(t *testing.T) {
	files := siteOf(t, madeUpApp)
	for _, name := range []string{"index.html", "recover/index.html"} {
		page := string(files[name])
		if !strings.Contains(page, `<head><meta http-equiv="Content-Security-Policy" content="default-src &#39;none&#39;;`) {
			t.Errorf("%s does not start its head with the policy: %s", name, page)
		}
		if strings.Contains(page, "frame-ancestors") || !strings.Contains(page, "trusted-types rimside") {
			t.Errorf("%s has the wrong policy for a page: %s", name, page)
		}
	}
	for name, want := range map[string]bool{"a/11/main.js": true, "a/11/main.js.br": true, "sw.js": true, "index.html.br": false, "sw.js.gz": false, ".keep": false} {
		if _, found := files[name]; found != want {
			t.Errorf("%s in the site: %v, want %v", name, found, want)
		}
	}
	if _, err := siteFiles(fstest.MapFS{"index.html": &fstest.MapFile{Data: []byte("<p>no head")}}); err == nil || !strings.Contains(err.Error(), "<head>") {
		t.Errorf("a page that cannot carry the policy: error %v", err)
	}
}

func TestASiteReplacesAnEarlierOneAndNothingElse(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "deep", "site")
	if err := writeSite(dir, "v1", siteOf(t, madeUpApp)); err != nil {
		t.Fatal(err)
	}
	own := filepath.Join(dir, "CNAME")
	if err := os.WriteFile(own, []byte("rimside.example"), 0o600); err != nil {
		t.Fatal(err)
	}
	next := map[string]string{"index.html": "<head>", "a/22/main.js": "3"}
	if err := writeSite(dir, "v2", siteOf(t, next)); err != nil {
		t.Fatal(err)
	}
	var left []string
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, _ fs.DirEntry, err error) error {
		left = append(left, name)
		return err
	})
	want := ". CNAME a a/22 a/22/main.js index.html rimside-site.json"
	if got := strings.Join(left, " "); err != nil || got != want {
		t.Errorf("the folder holds %s (%v), want %s", got, err, want)
	}
}

func TestASiteIsNotWrittenOverSomethingElse(t *testing.T) {
	for name, content := range map[string]string{"letter.txt": "dear", siteMark: "not our list"} {
		dir := t.TempDir()
		file := filepath.Join(dir, name)
		if err := os.WriteFile(file, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := writeSite(dir, "v1", siteOf(t, madeUpApp)); err == nil || !strings.Contains(err.Error(), "empty folder") {
			t.Errorf("over %s: error %v, want one that asks for an empty folder", name, err)
		}
		if left, err := os.ReadDir(dir); err != nil || len(left) != 1 {
			t.Errorf("over %s: something was written: %v, %v", name, left, err)
		}
	}
}

// A list that somebody doctored cannot make us remove what lies outside the folder.
func TestADoctoredListReachesNothingOutside(t *testing.T) {
	top := t.TempDir()
	outside := filepath.Join(top, "letter.txt")
	dir := filepath.Join(top, "site")
	if err := os.WriteFile(outside, []byte("dear"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, siteMark), []byte(`{"files":["../letter.txt","/etc/x",".."]}`), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := writeSite(dir, "v1", siteOf(t, madeUpApp)); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(outside); err != nil {
		t.Errorf("a file outside the site is gone: %v", err)
	}
}
