package cli_test

import (
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

func login(t *testing.T, data string, port int) (*exec.Cmd, *reached) {
	t.Helper()
	command := program(t, nil, "-login", "-name", carName, "-addr", fmt.Sprint("127.0.0.1:", port), "-data", data)
	return command, reach(t, command, "http", port)
}

// says runs the program to its end, which must be a good one, and returns what it wrote.
func says(t *testing.T, args ...string) string {
	t.Helper()
	code, stdout, stderr := finish(t, program(t, nil, args...))
	if code != 0 {
		t.Fatalf("%v: exit code %d, %s", args, code, stderr)
	}
	return stdout
}

func TestPairBesideARunningServer(t *testing.T) {
	data, port := t.TempDir(), freePort(t)
	_, server := login(t, data, port)
	first, _ := server.pair(t, codeIn(t, server.hears(t, "Pairing code: ")))
	second, _ := server.pair(t, codeIn(t, says(t, "pair", "-data", data)))
	if server.status(t, first) != 200 || server.status(t, second) != 200 || first == second {
		t.Error("not both are in")
	}
	private(t, data)
}

func TestAServerThatKnowsPhonesPrintsNoCode(t *testing.T) {
	data, port := t.TempDir(), freePort(t)
	command, server := login(t, data, port)
	cookie, _ := server.pair(t, codeIn(t, server.hears(t, "Pairing code: ")))
	stop(command)
	_, server = login(t, data, port)
	server.hears(t, "To let in another phone")
	if strings.Contains(server.said.String(), "Pairing code") {
		t.Errorf("it said %s", server.said)
	}
	if got := server.status(t, cookie); got != 200 {
		t.Errorf("paired before the restart: status %d", got)
	}
}

func TestNewKeysTwiceSendEveryPhoneAway(t *testing.T) {
	data, port := t.TempDir(), freePort(t)
	command, server := login(t, data, port)
	cookie, _ := server.pair(t, codeIn(t, server.hears(t, "Pairing code: ")))
	for times, want := range []int{200, 200, 401} {
		if times > 0 {
			if said := says(t, "pair", "-new-keys", "-data", data); !strings.Contains(said, "next start") || strings.Contains(said, "Pairing code") {
				t.Errorf("it said %s", said)
			}
			stop(command)
			command, server = login(t, data, port)
		}
		if got := server.status(t, cookie); got != want {
			t.Errorf("after %d new keys: status %d, want %d", times, got, want)
		}
	}
}

func TestTwoServersOnOneFolderAreRefused(t *testing.T) {
	data := t.TempDir()
	first := program(t, nil, "-addr", "127.0.0.1:0", "-data", data)
	serving(t, first)
	code, _, stderr := finish(t, program(t, nil, "-addr", "127.0.0.1:0", "-data", data))
	if code != 1 || !strings.Contains(stderr, "another Rimside serves "+data) || !strings.Contains(stderr, "-data DIR") {
		t.Errorf("exit code %d, %s", code, stderr)
	}
	if err := first.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = first.Wait()
	if status, _ := get(t, serving(t, program(t, nil, "-addr", "127.0.0.1:0", "-data", data))+"/api/health"); status != 200 {
		t.Errorf("after the first was killed: status %d", status)
	}
}

// A backup makes a second car: the same server to every phone, with another log.
func TestASiblingKnowsTheSamePhones(t *testing.T) {
	one, two, port := t.TempDir(), filepath.Join(t.TempDir(), "two"), freePort(t)
	first := lan(t, one, port)
	authority := first.authority(t)
	first.trusts(t, authority)
	cookie, _ := first.pair(t, codeIn(t, first.hears(t, "Pairing code: ")))
	if response, body := first.ask(t, "POST", "/api/ops", `{"book":"`+testBook+`","log":"","ops":[`+opText(1, `{"x":1}`)+`]}`, "Cookie", cookie); response.StatusCode != 200 {
		t.Fatalf("%d %s", response.StatusCode, body)
	}
	open := codeIn(t, says(t, "pair", "-data", one))
	file := filepath.Join(t.TempDir(), "all.tar")
	says(t, "backup", "-data", one, file)
	says(t, "restore", "-data", two, file)
	says(t, "verify", "-data", two)
	second := lan(t, two, freePort(t))
	if got := second.authority(t); string(got) != string(authority) {
		t.Error("the sibling has another authority")
	}
	second.trusts(t, authority)
	if got := second.status(t, cookie); got != 200 {
		t.Errorf("a phone of the first at the second: status %d", got)
	}
	_, here := first.ask(t, "GET", "/api/book", "", "Cookie", cookie)
	_, there := second.ask(t, "GET", "/api/book", "", "Cookie", cookie)
	if member(here, "server") != member(there, "server") || member(here, "book") != member(there, "book") || member(here, "digest") != member(there, "digest") || logOf(t, here) == logOf(t, there) {
		t.Errorf("the first is %s\nthe second is %s", here, there)
	}
	if response, _ := second.ask(t, "POST", "/api/pair", `{"code":"`+open+`","label":"x"}`); response.StatusCode != 403 {
		t.Errorf("a code of the first at the second: status %d, want 403", response.StatusCode)
	}
	first.pair(t, open)
	if _, devices := second.ask(t, "GET", "/api/devices", "", "Cookie", cookie); strings.Count(devices, `"id"`) != 1 || !strings.Contains(devices, `"here":true`) {
		t.Errorf("the second knows %s", devices)
	}
	private(t, one)
	private(t, two)
	private(t, filepath.Dir(file))
}

// member is a text in an object written in JSON.
func member(body, name string) string {
	_, after, _ := strings.Cut(body, `"`+name+`":"`)
	value, _, _ := strings.Cut(after, `"`)
	return value
}
