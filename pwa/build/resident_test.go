package main

import (
	"bufio"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
	"time"

	"rimside/pwa"
)

// residentMB starts the program, has it answer what a phone asks for at its first visit, and returns how much memory it
// then holds.
func residentMB(t *testing.T, binary string) float64 {
	t.Helper()
	command := exec.Command(binary, "serve", "-addr", "127.0.0.1:0", "-data", t.TempDir())
	output, err := command.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	defer func() {
		_ = command.Process.Kill()
		_ = command.Wait()
	}()
	watchdog := time.AfterFunc(time.Minute, func() { _ = command.Process.Kill() })
	defer watchdog.Stop()
	line, err := bufio.NewReader(output).ReadString('\n')
	if err != nil {
		t.Fatalf("the server did not start: %v", err)
	}
	base := strings.TrimSpace(strings.TrimPrefix(line, "Rimside is at "))
	firstVisit(t, base)
	return readResident(t, command.Process.Pid)
}

// firstVisit fetches the page and everything that the worker would keep, and runs a calculation.
func firstVisit(t *testing.T, base string) {
	t.Helper()
	fetched := 0
	for _, address := range append(hashedFiles(t), "", "sw.js", "app.webmanifest", "version.json", "api/calc") {
		response, err := http.Get(base + "/" + address)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.Copy(io.Discard, response.Body); err != nil || response.StatusCode != http.StatusOK {
			t.Fatalf("/%s: status %d, %v", address, response.StatusCode, err)
		}
		response.Body.Close()
		fetched++
	}
	response, err := http.Post(base+"/api/calc/air", "application/json", strings.NewReader(`{"kpa":200,"from":{"c":20,"m":0},"to":{"c":5,"m":1100}}`))
	if err != nil || response.StatusCode != http.StatusOK {
		t.Fatalf("a calculation: %v, %v", response, err)
	}
	response.Body.Close()
	if fetched < 10 {
		t.Fatalf("only %d files make up the app", fetched)
	}
}

// hashedFiles lists the addresses under /a/ that a browser asks for.
func hashedFiles(t *testing.T) []string {
	t.Helper()
	var addresses []string
	for name := range embedded(t, pwa.Dist()) {
		if strings.HasPrefix(name, "a/") {
			addresses = append(addresses, strings.TrimSuffix(name, ".br"))
		}
	}
	return addresses
}

func readResident(t *testing.T, pid int) float64 {
	t.Helper()
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(status)) {
		if value, found := strings.CutPrefix(line, "VmRSS:"); found {
			kibi, err := strconv.ParseFloat(strings.TrimSuffix(strings.TrimSpace(value), " kB"), 64)
			if err != nil {
				t.Fatal(err)
			}
			return kibi * 1024 / 1e6
		}
	}
	t.Fatal("/proc tells no resident memory")
	return 0
}
