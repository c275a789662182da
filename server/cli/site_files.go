package cli

import (
	"bytes"
	"fmt"
	"html"
	"io/fs"
	"path"
	"strings"

	"rimside/pwa"
	"rimside/server/web"
)

// siteFiles are the app's files for a host whose headers are not ours: the pages carry the content security policy
// themselves. Compressed copies go along only where the file beside them stays as it was.
func siteFiles(dist fs.FS) (map[string][]byte, error) {
	files := map[string][]byte{}
	err := fs.WalkDir(dist, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || strings.HasPrefix(path.Base(name), ".") {
			return err
		}
		compressed := path.Ext(name) == ".br" || path.Ext(name) == ".gz"
		if compressed && !strings.HasPrefix(name, "a/") {
			return nil
		}
		content, err := fs.ReadFile(dist, name)
		if err == nil && path.Ext(name) == ".html" {
			content, err = withPolicy(name, content)
		}
		files[name] = content
		if err != nil || path.Ext(name) != ".br" {
			return err
		}
		return unpackLone(dist, files, strings.TrimSuffix(name, ".br"), content)
	})
	return files, err
}

// unpackLone adds the plain form of a file that the build has in compressed forms only: other hosts need it.
func unpackLone(dist fs.FS, files map[string][]byte, name string, small []byte) error {
	if _, err := fs.Stat(dist, name); err == nil {
		return nil
	}
	plain, err := pwa.Unpack(small)
	files[name] = plain
	return err
}

// withPolicy puts the policy first in the page's head: it holds only for what comes after it.
func withPolicy(name string, page []byte) ([]byte, error) {
	before, after, found := bytes.Cut(page, []byte("<head>"))
	if !found {
		return nil, trouble("site.headless", "page", name)
	}
	meta := fmt.Sprintf(`<meta http-equiv="Content-Security-Policy" content="%s">`, html.EscapeString(web.MetaPolicy()))
	return fmt.Appendf(nil, "%s<head>%s%s", before, meta, after), nil
}
