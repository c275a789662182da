package trust

import (
	"fmt"
	"strings"

	"rimside/calc/qr"
)

// QRText draws a text as a QR code for a terminal, two rows a line, dark on light whatever the terminal's colours. Errors: qr.ErrTooLong.
func QRText(text string) (string, error) {
	code, err := qr.Encode(text)
	if err != nil {
		return "", err
	}
	var out strings.Builder
	for y := -qr.Quiet; y < code.Size()+qr.Quiet; y += 2 {
		out.WriteString("\x1b[30;107m") // black on bright white
		for x := -qr.Quiet; x < code.Size()+qr.Quiet; x++ {
			out.WriteString(halves[[2]bool{code.Dark(x, y), code.Dark(x, y+1)}])
		}
		out.WriteString("\x1b[0m\n")
	}
	return out.String(), nil
}

var halves = map[[2]bool]string{{false, false}: " ", {true, false}: "▀", {false, true}: "▄", {true, true}: "█"}

// QRPicture draws a text as a QR code in SVG. Errors: qr.ErrTooLong.
func QRPicture(text string) (string, error) {
	code, err := qr.Encode(text)
	if err != nil {
		return "", err
	}
	var path strings.Builder
	for y := range code.Size() {
		for x := range code.Size() {
			if code.Dark(x, y) {
				fmt.Fprintf(&path, "M%d %dh1v1h-1z", x+qr.Quiet, y+qr.Quiet)
			}
		}
	}
	side := code.Size() + 2*qr.Quiet
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" shape-rendering="crispEdges"><path fill="#fff" d="M0 0h%dv%dH0z"/><path fill="#000" d="%s"/></svg>`,
		side, side, side, side, path.String()), nil
}
