package cli

import (
	"context"
	"log/slog"
	"net"
	"strconv"
	"time"

	"rimside/server/access"
	"rimside/server/trust"
	"rimside/server/web"
)

// trustPort is where phones fetch the authority: two above the app's port.
const trustAbove = 2

// serveTrust hands out the authority over plain http, which a phone needs before it can speak https with this server. It
// returns what ends it.
func serveTrust(ctx context.Context, how *reach, at net.Addr, log *slog.Logger) (end func(), err error) {
	if how.authority == nil {
		return func() {}, nil
	}
	tcp, isTCP := at.(*net.TCPAddr)
	if !isTCP {
		return func() {}, nil
	}
	port := tcp.Port + trustAbove
	addr := net.JoinHostPort(tcp.IP.String(), strconv.Itoa(port))
	listener, err := net.Listen("tcp", addr)
	if err != nil {
		return nil, trouble("trust.cannot", "port", port, "why", explainListen(addr, err))
	}
	hosts := access.ForListener(listener.Addr(), how.access.Host)
	page, err := trust.Page(how.authority, how.access.Origin, hosts.Allows)
	if err != nil {
		return nil, err
	}
	how.page = "http://" + net.JoinHostPort(how.access.Host, strconv.Itoa(port)) + "/"
	ctx, stop := context.WithCancel(ctx)
	ended := make(chan error, 1)
	go func() { ended <- web.Run(ctx, listener, page, log) }()
	return func() {
		stop()
		select {
		case err := <-ended:
			if err != nil {
				log.Error("the page on which phones learn to trust this server ended", "error", err)
			}
		case <-time.After(15 * time.Second):
		}
	}, nil
}
