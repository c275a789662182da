package trust

import (
	"encoding/xml"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"rsc.io/qr"
)

const address = "https://a-rather-long-name-of-a-car.local:7467"

const white = 4 // modules round a code, as scanners want

// modules draws a code by another encoder than the one that is tested: dark modules as #.
func modules(t *testing.T) (grid []string) {
	t.Helper()
	code, err := qr.Encode(address, qr.M)
	if err != nil {
		t.Fatal(err)
	}
	for y := -white; y < code.Size+white; y++ {
		var row strings.Builder
		for x := -white; x < code.Size+white; x++ {
			row.WriteString(map[bool]string{true: "#", false: "."}[code.Black(x, y) && x >= 0 && y >= 0 && x < code.Size && y < code.Size])
		}
		grid = append(grid, row.String())
	}
	return grid
}

func TestTheCodeOnTheTerminalHasEveryModule(t *testing.T) {
	text, err := QRText(address)
	if err != nil {
		t.Fatal(err)
	}
	want := modules(t)
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	for i, line := range lines {
		inner, dark := strings.CutPrefix(line, "\x1b[30;107m")
		inner, ends := strings.CutSuffix(inner, "\x1b[0m")
		if !dark || !ends {
			t.Fatalf("line %d does not say its colours: %q", i, line)
		}
		upper := strings.NewReplacer(" ", ".", "▀", "#", "▄", ".", "█", "#").Replace(inner)
		lower := strings.NewReplacer(" ", ".", "▀", ".", "▄", "#", "█", "#").Replace(inner)
		if upper != want[2*i] || 2*i+1 < len(want) && lower != want[2*i+1] {
			t.Errorf("line %d is\n%s\n%s, want\n%s", i, upper, lower, want[2*i])
		}
	}
	if len(lines) != (len(want)+1)/2 {
		t.Errorf("%d lines for %d rows", len(lines), len(want))
	}
}

func TestTheCodeInThePictureHasEveryModule(t *testing.T) {
	picture, err := QRPicture(address)
	if err != nil {
		t.Fatal(err)
	}
	if err := xml.Unmarshal([]byte(picture), new(struct{ XMLName xml.Name })); err != nil {
		t.Fatal(err)
	}
	want := modules(t)
	if !strings.Contains(picture, fmt.Sprintf(`viewBox="0 0 %d %d"`, len(want), len(want))) {
		t.Errorf("%.120s: the quiet zone is not inside", picture)
	}
	drawn := make([][]byte, len(want))
	for y := range drawn {
		drawn[y] = []byte(strings.Repeat(".", len(want)))
	}
	for _, at := range regexp.MustCompile(`M(\d+) (\d+)h1v1h-1z`).FindAllStringSubmatch(picture, -1) {
		var x, y int
		if _, err := fmt.Sscan(at[1], &x); err != nil {
			t.Fatal(err)
		}
		if _, err := fmt.Sscan(at[2], &y); err != nil {
			t.Fatal(err)
		}
		drawn[y][x] = '#'
	}
	for y := range want {
		if string(drawn[y]) != want[y] {
			t.Errorf("row %d is %s, want %s", y, drawn[y], want[y])
		}
	}
	finder := []string{"#######", "#.....#", "#.###.#", "#.###.#", "#.###.#", "#.....#", "#######"}
	for _, corner := range [][2]int{{white, white}, {len(want) - white - 7, white}, {white, len(want) - white - 7}} {
		for y, row := range finder {
			if got := string(drawn[corner[1]+y][corner[0] : corner[0]+7]); got != row {
				t.Errorf("the mark at %v has the row %s, want %s", corner, got, row)
			}
		}
	}
}

func TestATextTooLongForACodeIsAnError(t *testing.T) {
	long := strings.Repeat("x", 3000)
	if _, err := QRText(long); err == nil {
		t.Error("no error on the terminal")
	}
	if _, err := QRPicture(long); err == nil {
		t.Error("no error in the picture")
	}
}
