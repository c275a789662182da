package cli

import (
	"context"
	"flag"
	"fmt"
	"log/slog"
	"net"
	"os/signal"
	"syscall"

	"rimside/calc/registry"
	"rimside/pwa"
	"rimside/server/web"
)

const (
	usualAddress = "127.0.0.1:7467"
	demoAddress  = "127.0.0.1:7468"
)

// serveSettings are serve's flags.
type serveSettings struct {
	addr, data string
	demo, dev  bool
}

func (s *serveSettings) flags() *flag.FlagSet {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	flags.StringVar(&s.addr, "addr", "", "listen on `HOST:PORT`; "+usualAddress+", or "+demoAddress+" with -demo, if not given")
	flags.StringVar(&s.data, "data", "", "keep the book's file in the folder `DIR`; your own data folder if not given")
	flags.BoolVar(&s.demo, "demo", false, "show an invented event to try the app with; no folder is made unless -data names one")
	flags.BoolVar(&s.dev, "dev", false, "log every request")
	return flags
}

// serve serves until the process is asked to stop.
func serve(c call) error {
	var settings serveSettings
	rest, err := parse(c, settings.flags())
	if err != nil {
		return err
	}
	if len(rest) > 0 {
		return usageError{fmt.Sprintf("serve takes flags only, not %q; see rimside help", rest[0])}
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

func listenAndServe(ctx context.Context, c call, settings serveSettings) error {
	level := slog.LevelInfo
	if settings.dev {
		level = slog.LevelDebug
	}
	log := slog.New(slog.NewTextHandler(c.stderr, &slog.HandlerOptions{Level: level}))
	if settings.data != "" {
		if err := makeDataDir(settings.data); err != nil {
			return err
		}
	}
	listener, err := net.Listen("tcp", settings.addr)
	if err != nil {
		return explainListen(settings.addr, err)
	}
	defer listener.Close()
	handler, err := web.New(web.Options{
		Dist:         pwa.Dist(),
		Calculations: web.Calculations{Call: registry.Call, Describe: registry.Describe},
		Listen:       listener.Addr(),
		Demo:         settings.demo,
		Log:          log,
	})
	if err != nil {
		return err
	}
	announce(c, log, listener.Addr(), settings)
	return web.Run(ctx, listener, handler, log)
}

// announce says where the app is, for people on stdout and for the log on stderr.
func announce(c call, log *slog.Logger, at net.Addr, settings serveSettings) {
	built := pwa.Version(pwa.Dist())
	if built == "" {
		log.Warn("the app is not built: run go generate ./... and start again")
	}
	url := openAt(at)
	log.Info("ready", "url", url, "version", built, "data", settings.data, "demo", settings.demo)
	fmt.Fprintf(c.stdout, "Rimside is at %s\n", url)
}
