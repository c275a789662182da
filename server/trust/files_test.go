package trust

import (
	"bytes"
	"crypto/x509"
	"encoding/pem"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// pairOf writes a certificate for a name and its key.
func pairOf(t *testing.T, dir, name string, at time.Time) {
	t.Helper()
	authority, _ := authorityOf(t, kept{}, name, noon)
	shown, err := machineOf(authority, name).Certificate()
	if err != nil {
		t.Fatal(err)
	}
	key, err := x509.MarshalPKCS8PrivateKey(shown.PrivateKey)
	if err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(dir, "cert.pem"), pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: shown.Certificate[0]}), at)
	write(t, filepath.Join(dir, "key.pem"), pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: key}), at)
}

func write(t *testing.T, name string, content []byte, at time.Time) {
	t.Helper()
	if err := os.WriteFile(name, content, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(name, at, at); err != nil {
		t.Fatal(err)
	}
}

func TestACertificateFromFilesIsReadAgainWhenTheyChange(t *testing.T) {
	dir, now := t.TempDir(), noon
	pairOf(t, dir, "one.example", noon)
	var said bytes.Buffer
	files, err := OpenFiles(filepath.Join(dir, "cert.pem"), filepath.Join(dir, "key.pem"), func() time.Time { return now }, slog.New(slog.NewTextHandler(&said, nil)))
	if err != nil {
		t.Fatal(err)
	}
	shows := func(want string) {
		t.Helper()
		if leaf, err := x509.ParseCertificate(files.Certificate().Certificate[0]); err != nil || leaf.DNSNames[0] != want {
			t.Errorf("shows %v (%v), want %s", leaf.DNSNames, err, want)
		}
	}
	shows("one.example")
	pairOf(t, dir, "two.example", noon.Add(time.Minute))
	now = now.Add(filesLookEvery - time.Second)
	shows("one.example") // it does not look all the time
	now = now.Add(time.Second)
	shows("two.example")
	write(t, filepath.Join(dir, "cert.pem"), []byte("half a certif"), noon.Add(2*time.Minute))
	now = now.Add(filesLookEvery)
	shows("two.example")
	if !strings.Contains(said.String(), "the one before stays") {
		t.Errorf("nothing was said of a broken file: %s", said.String())
	}
	if err := os.Remove(filepath.Join(dir, "key.pem")); err != nil {
		t.Fatal(err)
	}
	now = now.Add(filesLookEvery)
	shows("two.example")
	pairOf(t, dir, "three.example", noon.Add(3*time.Minute))
	now = now.Add(filesLookEvery)
	shows("three.example")
}

func TestFilesThatDoNotGoTogetherAreSaidAtTheStart(t *testing.T) {
	one, two := t.TempDir(), t.TempDir()
	pairOf(t, one, "one.example", noon)
	pairOf(t, two, "two.example", noon)
	for _, pair := range [][2]string{
		{filepath.Join(one, "cert.pem"), filepath.Join(two, "key.pem")}, {filepath.Join(one, "key.pem"), filepath.Join(one, "cert.pem")}, {filepath.Join(one, "absent"), filepath.Join(one, "key.pem")},
	} {
		if _, err := OpenFiles(pair[0], pair[1], time.Now, quiet); err == nil || !strings.Contains(err.Error(), "the certificate cannot be used") {
			t.Errorf("%v: %v", pair, err)
		}
	}
}
