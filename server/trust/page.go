package trust

import (
	_ "embed"
	"errors"
	"net/http"
	"strings"

	"rimside/calc/qr"

	"rimside/server/words"
)

//go:embed page/page.html
var pageHTML string

//go:embed page/page.css
var pageCSS []byte

// pagePolicy: this page runs nothing and fetches nothing from elsewhere.
const pagePolicy = "default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

const certificateName = "rimside-authority.crt"

// Page is what plain http hands out on a port of its own: the authority's certificate, how to compare and to trust it, and
// the way to the app, in the language that the browser wants. It knows nothing of the book.
func Page(authority *Authority, origin string, allows func(host string) bool) (http.Handler, error) {
	html := pageHTML
	picture, err := QRPicture(origin)
	if errors.Is(err, qr.ErrTooLong) {
		html = without(html, "/qr.svg") // the address stands there all the same
	} else if err != nil {
		return nil, err
	}
	pages := map[string]string{}
	for _, each := range words.Languages {
		pages[each] = filler(each, map[string]string{"origin": origin, "fingerprint": spaced(authority.Fingerprint())}).Replace(html)
	}
	files := map[string]struct{ kind, content string }{
		"/":                      {"text/html; charset=utf-8", ""}, // one of the pages
		"/page.css":              {"text/css; charset=utf-8", string(pageCSS)},
		"/" + certificateName:    {"application/x-x509-ca-cert", string(authority.DER())},
		"/rimside-authority.pem": {"application/x-pem-file", string(authority.PEM())},
	}
	if picture != "" {
		files["/qr.svg"] = struct{ kind, content string }{"image/svg+xml", picture}
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for name, value := range map[string]string{
			"Content-Security-Policy": pagePolicy, "X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer",
			"Cross-Origin-Opener-Policy": "same-origin", "Cross-Origin-Resource-Policy": "same-origin", "Cache-Control": "no-store",
		} {
			w.Header().Set(name, value)
		}
		file, found := files[r.URL.Path]
		switch {
		case !allows(r.Host):
			http.Error(w, "This server does not answer to that name.", http.StatusMisdirectedRequest)
		case r.Method != http.MethodGet && r.Method != http.MethodHead:
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "This address can only be read.", http.StatusMethodNotAllowed)
		case !found:
			http.Error(w, "There is nothing at this address.", http.StatusNotFound)
		default:
			if r.URL.Path == "/" {
				spoken := language(strings.Join(r.Header.Values("Accept-Language"), ","))
				w.Header().Set("Vary", "Accept-Language")
				w.Header().Set("Content-Language", spoken)
				file.content = pages[spoken]
			}
			w.Header().Set("Content-Type", file.kind)
			_, _ = w.Write([]byte(file.content))
		}
	}), nil
}

// without leaves out the lines that hold this text.
func without(page, text string) string {
	var kept strings.Builder
	for line := range strings.Lines(page) {
		if !strings.Contains(line, text) {
			kept.WriteString(line)
		}
	}
	return kept.String()
}

// spaced lets a long fingerprint break between its lines: eight pairs each.
func spaced(fingerprint string) string {
	pairs := strings.Split(fingerprint, ":")
	var lines []string
	for len(pairs) > 0 {
		n := min(8, len(pairs))
		lines = append(lines, strings.Join(pairs[:n], ":"))
		pairs = pairs[n:]
	}
	return strings.Join(lines, " ")
}
