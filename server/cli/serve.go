package cli

import (
	"context"
	"crypto/tls"
	"errors"
	"flag"
	"log/slog"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"time"

	"rimside/calc/registry"
	"rimside/pwa"
	"rimside/server/access"
	"rimside/server/web"
	"rimside/store/blob"
	"rimside/store/sqlite"
)

const (
	usualAddress = "127.0.0.1:7467"
	lanAddress   = ":7467"
	demoAddress  = "127.0.0.1:7468"
)

// serveSettings are serve's flags.
type serveSettings struct {
	addr, data, name  string
	cert, key         string
	lan, login, proxy bool
	demo, dev         bool
}

func (s *serveSettings) flags() *flag.FlagSet {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	flags.StringVar(&s.addr, "addr", "", "flag.addr")
	flags.StringVar(&s.data, "data", "", "flag.data")
	flags.BoolVar(&s.lan, "lan", false, "flag.lan")
	flags.StringVar(&s.name, "name", "", "flag.name")
	flags.BoolVar(&s.login, "login", false, "flag.login")
	flags.StringVar(&s.cert, "cert", "", "flag.cert")
	flags.StringVar(&s.key, "key", "", "flag.key")
	flags.BoolVar(&s.proxy, "behind-proxy", false, "flag.proxy")
	flags.BoolVar(&s.demo, "demo", false, "flag.demo")
	flags.BoolVar(&s.dev, "dev", false, "flag.dev")
	return flags
}

// serve serves until the process is asked to stop.
func serve(c call) error {
	var settings serveSettings
	operands, err := parse(c, settings.flags())
	if err != nil {
		return err
	}
	if len(operands) > 0 {
		return misused("misused.serve", "given", strconv.Quote(operands[0]))
	}
	if err := settings.complete(c.env); err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGINT, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second signal ends the program at once
	return listenAndServe(ctx, c, settings)
}

// complete fills in what was not given and checks what can be checked before anything is opened.
func (s *serveSettings) complete(env Lookup) error {
	if s.addr == "" {
		s.addr = usualAddress
		if s.demo {
			s.addr = demoAddress
		}
		if s.lan {
			s.addr = lanAddress
		}
	}
	if err := s.checkReach(); err != nil {
		return err
	}
	if err := checkAddress(s.addr); err != nil {
		return err
	}
	if s.data == "" && !s.demo {
		folder, err := userDataDir(env)
		if err != nil {
			return err
		}
		s.data = folder
	}
	return nil
}

func listenAndServe(ctx context.Context, c call, settings serveSettings) (err error) {
	level := slog.LevelInfo
	if settings.dev {
		level = slog.LevelDebug
	}
	log := c.textLog(level)
	if settings.data == "" {
		// Only a demo has no folder: its book lives as long as the program.
		if settings.data, err = os.MkdirTemp("", "rimside-demo-"); err != nil {
			return trouble("data.demo", "why", err)
		}
		defer func() { err = errors.Join(err, os.RemoveAll(settings.data)) }()
	}
	if err := makeDataDir(settings.data); err != nil {
		return err
	}
	release, err := alone(settings.data)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, release()) }()
	listener, err := net.Listen("tcp", settings.addr)
	if err != nil {
		return explainListen(settings.addr, err)
	}
	defer listener.Close()
	book, err := openBook(settings.data, log)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, book.Close()) }()
	how, err := reachOf(ctx, settings, listener.Addr(), book, log)
	if err != nil {
		return err
	}
	handler, err := web.New(ctx, web.Options{
		Access:       how.access,
		Dist:         pwa.Dist(),
		Calculations: web.Calculations{Call: registry.Call, Contracts: registry.Contracts},
		Now:          book.Now,
		Listen:       listener.Addr(),
		Demo:         settings.demo,
		Book:         book,
		Blobs:        blob.Open(settings.data),
		Name:         serverName(),
		Visitors:     access.NewLog(filepath.Join(settings.data, "access.log")),
		Log:          log,
	})
	if err != nil {
		return err
	}
	if settings.demo {
		if err := web.SeedDemo(ctx, book); err != nil {
			return err
		}
	}
	defer keepTidy(ctx, book, log)()
	endPage, err := serveTrust(ctx, &how, listener.Addr(), log)
	if err != nil {
		return err
	}
	defer endPage()
	if err := announce(ctx, c, log, listener.Addr(), settings, how, book); err != nil {
		return err
	}
	if how.tls != nil {
		listener = tls.NewListener(listener, how.tls)
	}
	return web.Run(ctx, listener, handler, log)
}

// keepTidy has the book fold in, check and copy what is due, twice a minute, and returns what waits for its end.
func keepTidy(ctx context.Context, book *sqlite.Book, log *slog.Logger) (wait func()) {
	ctx, stop := context.WithCancel(ctx)
	var running sync.WaitGroup
	running.Go(func() {
		for every := time.NewTicker(30 * time.Second); ; {
			select {
			case <-ctx.Done():
				every.Stop()
				return
			case <-every.C:
				if err := book.Tick(ctx); err != nil && ctx.Err() == nil {
					log.Error("the copies of the book could not be made", "error", err)
				}
			}
		}
	})
	return func() {
		stop()
		running.Wait()
	}
}

// serverName is what people call this machine.
func serverName() string {
	name, err := os.Hostname()
	if err != nil {
		return ""
	}
	short, _, _ := strings.Cut(name, ".")
	return short
}
