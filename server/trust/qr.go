package trust

import (
	"fmt"
	"strings"

	"rsc.io/qr"
)

const quietZone = 4 // modules of white round a code, as ISO/IEC 18004 wants

// QRText draws a text as a QR code for a terminal, two rows a line, dark on light whatever the terminal's colours.
func QRText(text string) (string, error) {
	code, err := qr.Encode(text, qr.M)
	if err != nil {
		return "", err
	}
	var out strings.Builder
	for y := -quietZone; y < code.Size+quietZone; y += 2 {
		out.WriteString("\x1b[30;107m") // black on bright white
		for x := -quietZone; x < code.Size+quietZone; x++ {
			out.WriteString(halves[[2]bool{black(code, x, y), black(code, x, y+1)}])
		}
		out.WriteString("\x1b[0m\n")
	}
	return out.String(), nil
}

var halves = map[[2]bool]string{{false, false}: " ", {true, false}: "▀", {false, true}: "▄", {true, true}: "█"}

func black(code *qr.Code, x, y int) bool {
	return x >= 0 && y >= 0 && x < code.Size && y < code.Size && code.Black(x, y)
}

// QRPicture draws a text as a QR code in SVG.
func QRPicture(text string) (string, error) {
	code, err := qr.Encode(text, qr.M)
	if err != nil {
		return "", err
	}
	var path strings.Builder
	for y := range code.Size {
		for x := range code.Size {
			if code.Black(x, y) {
				fmt.Fprintf(&path, "M%d %dh1v1h-1z", x+quietZone, y+quietZone)
			}
		}
	}
	side := code.Size + 2*quietZone
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" shape-rendering="crispEdges"><path fill="#fff" d="M0 0h%dv%dH0z"/><path fill="#000" d="%s"/></svg>`,
		side, side, side, side, path.String()), nil
}
