package trust

import (
	"crypto/tls"
	"fmt"
	"log/slog"
	"os"
	"sync"
	"time"
)

// Files is a certificate that somebody else renews: it is read again when its files change.
type Files struct {
	cert, key string
	log       *slog.Logger
	now       func() time.Time

	mu     sync.Mutex
	shown  *tls.Certificate
	of     [2]time.Time
	looked time.Time
}

// OpenFiles reads a certificate and its key, both in PEM.
func OpenFiles(cert, key string, now func() time.Time, log *slog.Logger) (*Files, error) {
	f := &Files{cert: cert, key: key, log: log, now: now}
	shown, of, err := f.read()
	if err != nil {
		return nil, fmt.Errorf("the certificate cannot be used: %w", err)
	}
	f.shown, f.of, f.looked = shown, of, now()
	return f, nil
}

// Config is how the server speaks TLS with it.
func (f *Files) Config() *tls.Config {
	return &tls.Config{MinVersion: tls.VersionTLS12, GetCertificate: func(*tls.ClientHelloInfo) (*tls.Certificate, error) { return f.Certificate(), nil }}
}

const filesLookEvery = 10 * time.Second

// Certificate gives the one that the files hold. While they are being written, the one before stays.
func (f *Files) Certificate() *tls.Certificate {
	f.mu.Lock()
	defer f.mu.Unlock()
	if now := f.now(); now.Sub(f.looked).Abs() >= filesLookEvery {
		f.looked = now
		f.again()
	}
	return f.shown
}

func (f *Files) again() {
	of, err := f.times()
	if err == nil && of == f.of {
		return
	}
	shown, of, err := f.read()
	if err != nil {
		f.log.Error("the certificate's files have changed but cannot be used; the one before stays", "error", err)
		return
	}
	f.shown, f.of = shown, of
}

func (f *Files) read() (*tls.Certificate, [2]time.Time, error) {
	of, err := f.times()
	if err != nil {
		return nil, of, err
	}
	shown, err := tls.LoadX509KeyPair(f.cert, f.key)
	return &shown, of, err
}

func (f *Files) times() (of [2]time.Time, err error) {
	for i, name := range []string{f.cert, f.key} {
		about, err := os.Stat(name)
		if err != nil {
			return of, err
		}
		of[i] = about.ModTime()
	}
	return of, nil
}
