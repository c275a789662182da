package web

import (
	"context"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"time"
)

// drainTime is how long requests under way may take to finish once the server is asked to stop.
const drainTime = 10 * time.Second

// Run serves on the listener until ctx ends, then takes no new requests and lets those under way finish.
func Run(ctx context.Context, listener net.Listener, handler http.Handler, log *slog.Logger) error {
	server := newServer(handler, log)
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	log.Info("stopping: requests under way may finish", "within", drainTime)
	patience, cancel := context.WithTimeout(context.Background(), drainTime)
	defer cancel()
	if err := server.Shutdown(patience); err != nil {
		server.Close()
		return fmt.Errorf("requests that were still running after %s were cut off", drainTime)
	}
	return nil
}

// newServer sets the limits that keep slow or greedy clients from holding the server up.
func newServer(handler http.Handler, log *slog.Logger) *http.Server {
	return &http.Server{
		Handler:                      handler,
		ReadHeaderTimeout:            5 * time.Second,
		ReadTimeout:                  30 * time.Second,
		WriteTimeout:                 60 * time.Second,
		IdleTimeout:                  2 * time.Minute,
		MaxHeaderBytes:               16 << 10,
		DisableGeneralOptionsHandler: true, // "OPTIONS *" must meet the Host rule and get the headers too
		ErrorLog:                     slog.NewLogLogger(log.Handler(), slog.LevelDebug),
	}
}
