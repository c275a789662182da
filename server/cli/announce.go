package cli

import (
	"context"
	"fmt"
	"io"
	"log/slog"
	"net"
	"os"
	"strconv"

	"rimside/pwa"
	"rimside/server/access"
	"rimside/server/trust"
	"rimside/server/web"
	"rimside/store/sqlite"
)

// announce says where the app is and how to come in, for people on stdout and for the log on stderr.
func announce(ctx context.Context, c call, log *slog.Logger, at net.Addr, settings serveSettings, how reach, book *sqlite.Book) error {
	built := pwa.Version(pwa.Dist())
	if built == "" {
		log.Warn("the app is not built: run go generate ./... and start again")
	}
	url := how.access.Origin
	if url == "" {
		url = openAt(at, how.access.Secure)
	}
	log.Info("ready", "url", url, "version", built, "data", settings.data, "demo", settings.demo)
	c.say("at", "url", url)
	if how.access.Origin != "" && isTerminal(c.stdout) {
		if picture, err := trust.QRText(url); err == nil {
			fmt.Fprint(c.stdout, picture)
		}
	}
	if how.authority != nil {
		c.say("trust", "page", how.page, "fingerprint", how.authority.Fingerprint())
		if how.fresh {
			log.Warn("a new authority was made: every phone has to trust it once", "for", how.access.Host)
		}
	}
	tcp, isTCP := at.(*net.TCPAddr)
	if !how.access.Policy.Login && isTCP && tcp.IP.IsLoopback() {
		return nil
	}
	if !how.access.Secure {
		log.Warn("others reach this server without https: phones cannot install the app from it. Use -lan")
	}
	return offerCode(ctx, c, book)
}

// isTerminal tells whether people read what is written, and colours work.
func isTerminal(out io.Writer) bool {
	file, isFile := out.(*os.File)
	if !isFile {
		return false
	}
	about, err := file.Stat()
	return err == nil && about.Mode()&os.ModeCharDevice != 0
}

// offerCode prints a code for the first phone. Later ones are let in by a paired phone, or by rimside pair.
func offerCode(ctx context.Context, c call, book *sqlite.Book) error {
	known, err := book.Devices(ctx)
	if err != nil {
		return err
	}
	for _, each := range known {
		if each.PairedAt > 0 && !each.Revoked {
			c.say("another")
			return nil
		}
	}
	return printCode(ctx, c, book)
}

func printCode(ctx context.Context, c call, book *sqlite.Book) error {
	code, expires := access.NewCode(), book.Now().Add(sqlite.CodeTime)
	if err := book.AddCode(ctx, code, expires, web.MostCodes); err != nil {
		return err
	}
	c.say("code", "code", access.SpokenCode(code), "time", expires.Local().Format("15:04"))
	return nil
}

// openAt is the address to open in a browser on this machine, or on another when the server listens on every network.
func openAt(at net.Addr, secure bool) string {
	tcp, isTCP := at.(*net.TCPAddr)
	if !isTCP {
		return at.String()
	}
	scheme := "http"
	if secure {
		scheme = "https"
	}
	host := tcp.IP.String()
	if tcp.IP.IsUnspecified() {
		host = "localhost"
		if name := hostName(); name != "" {
			host = name
		}
	}
	return scheme + "://" + net.JoinHostPort(host, strconv.Itoa(tcp.Port))
}
