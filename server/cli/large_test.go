package cli_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// largeBook imports a book of that many entries into a folder.
func largeBook(b *testing.B, entries int) (data string) {
	b.Helper()
	var file strings.Builder
	file.WriteString(`{"rimside":1,"book":"` + testBook + `"}` + "\n")
	for n := range entries {
		fmt.Fprintf(&file, `{"id":"%s","at":%d,"kind":"pressure_set","rec":"%032x","set":{"side":"front","gauge_kpa":%d,"c":18,"m":240},"author":"","device":"","schema":1}`+"\n",
			id(n+1), 1790000000000+n, n+1, 180+n%60)
	}
	name := filepath.Join(b.TempDir(), "large.ndjson")
	if err := os.WriteFile(name, []byte(file.String()), 0o600); err != nil {
		b.Fatal(err)
	}
	data = b.TempDir()
	command := program(b, nil, "import", "-data", data, name)
	if said, err := command.CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, said)
	}
	return data
}

// BenchmarkStartWithALargeBook is the time from starting the program on a book of 100,000 entries to its first page of
// them, and the memory it then holds.
func BenchmarkStartWithALargeBook(b *testing.B) {
	data := largeBook(b, 100_000)
	var slowest time.Duration
	resident := 0.0
	for b.Loop() {
		start := time.Now()
		command := program(b, nil, "-addr", "127.0.0.1:0", "-data", data)
		url := serving(b, command)
		if err := fetch(url + "/api/ops?limit=500"); err != nil {
			b.Fatal(err)
		}
		slowest = max(slowest, time.Since(start))
		resident = max(resident, residentMB(b, command.Process.Pid))
		_ = command.Process.Kill()
		_ = command.Wait()
	}
	b.ReportMetric(float64(slowest.Milliseconds()), "ms-slowest")
	b.ReportMetric(resident, "MB-resident")
}

// residentMB is what Linux says a process holds; 0 elsewhere.
func residentMB(b *testing.B, pid int) float64 {
	b.Helper()
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return 0
	}
	for line := range strings.Lines(string(status)) {
		if rest, found := strings.CutPrefix(line, "VmRSS:"); found {
			kb, _ := strconv.ParseFloat(strings.Fields(rest)[0], 64) // the kernel writes a number
			return kb / 1024
		}
	}
	return 0
}
