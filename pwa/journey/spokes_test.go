package journey

import (
	"bytes"
	little "encoding/binary"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// The plucks that the microphone hears, in turn: four spokes left, four right, the second of these far too loose.
var plucked = []float64{350, 340, 356, 345, 300, 240, 305, 298}

// recording writes plucks of stiff strings into a sound file, with some noise, as a microphone would bring them.
func recording(t *testing.T) string {
	t.Helper()
	const rate, lead, apart = 48000, 2.0, 1.6
	d := rand.New(rand.NewPCG(9, 20))
	wave := make([]int16, int((lead+apart*float64(len(plucked))+1)*rate))
	for i := range wave {
		x := 0.002 * d.NormFloat64()
		for n, hz := range plucked {
			s := float64(i)/rate - lead - apart*float64(n)
			if s < 0 || s > 1.2 {
				continue
			}
			for k := 1.0; k <= 5; k++ {
				stands := k * math.Sqrt((1+0.02*k*k)/1.02) // a stiff string's partials
				x += 0.35 * math.Abs(math.Sin(0.3*math.Pi*k)) / k * math.Exp(-s*(1+0.2*k*k)/0.25) * math.Sin(2*math.Pi*hz*stands*s)
			}
		}
		wave[i] = int16(math.Max(-1, math.Min(1, x)) * 32000)
	}
	var out bytes.Buffer
	size := uint32(2 * len(wave))
	out.WriteString("RIFF")
	for _, part := range []any{36 + size, []byte("WAVEfmt "), uint32(16), uint16(1), uint16(1), uint32(rate), uint32(2 * rate), uint16(2), uint16(16), []byte("data"), size, wave} {
		if err := little.Write(&out, little.LittleEndian, part); err != nil {
			t.Fatal(err)
		}
	}
	file := filepath.Join(t.TempDir(), "plucks.wav")
	if err := os.WriteFile(file, out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

// wheelOfEight is a wheel with eight spokes that was listened to in spring, when they sounded alike.
func wheelOfEight() []deed {
	var before []any
	for n, hz := range plucked {
		side, at := "left", n+1
		if n >= 4 {
			side, at, hz = "right", n-3, 300
		}
		before = append(before, members{"side": side, "n": at, "hz": hz})
	}
	old := 40 * 24 * time.Hour
	return []deed{
		{id: "s1", rec: "eight", kind: "wheel", ago: old, by: "Ana", set: members{"name": "Small front", "spokes": 8, "free_left_mm": 280, "free_right_mm": 282, "spoke_mm": 2}},
		{id: "s2", rec: "small", kind: "bike", ago: old, by: "Ana", set: members{"name": "Small one", "front": hexOf("eight")}},
		{id: "s3", rec: "spring", kind: "measure", ago: old, by: "Ana", set: members{"of": hexOf("eight"), "wheel": hexOf("eight"), "what": "spoke_tension", "day": time.Now().AddDate(0, 0, -40).Format(time.DateOnly), "spokes": before}},
	}
}

// A wheel is listened to through the microphone, with no signal: every pluck is heard at its pitch, the loose one stands out, what
// changed since spring is told, a slack one stops the wheel, and all of it reaches the server.
func TestSpokesAreListenedTo(t *testing.T) {
	in := words(t)
	server := TeamServer(StartServer(t), wheelOfEight()...)
	b := OpenBrowser(t, chromedp.Flag("use-fake-ui-for-media-stream", true), chromedp.Flag("use-fake-device-for-media-stream", true), chromedp.Flag("use-file-for-fake-audio-capture", recording(t)+"%noloop"))
	p := b.Open(server.URL() + "#/wheels/" + hexOf("eight"))
	p.installed()
	p.See("8 spokes heard")
	p.Allow(offline)
	server.Stop()
	p.Tap("link", in["spokes.open"])
	p.See(in["spokes.nothing"])
	p.Tap("button", in["spokes.listen"])
	p.See(fill(in["spokes.all"], "n", "8"))
	p.Tap("button", in["spokes.stop"])
	p.unfold(in["spokes.each"])
	text := p.Text()
	for n, hz := range plucked {
		side, at := "left", n+1
		if n >= 4 {
			side, at = "right", n-3
		}
		_, rest, found := strings.Cut(text, fmt.Sprintf("%s %d · ", side, at))
		number, _, _ := strings.Cut(rest, " ")
		if got, err := strconv.ParseFloat(number, 64); !found || err != nil || math.Abs(got/hz-1) > 0.01 {
			t.Errorf("%s %d was heard as %q, plucked at %v Hz", side, at, number, hz)
		}
	}
	p.See("Right 2: 30 % looser than its side.") // by hand: 57600 of the mean 82357 of 300, 240, 305 and 298 squared
	p.See(in["spokes.aidTurn"])
	p.See("Right 2: 36 % looser") // (240/300)^2 = 0.64
	p.Find("image", fill(in["spokes.picture"], "n", "8", "told", "Right 2: 30 % looser than its side."))
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("listening at " + size.Name)
	})
	p.Shot("spokes")

	// Typed instead of heard; a wrong one stays with its reason.
	p.tap(p.button(fill(in["spokes.linePick"], "line", "left 1 ")))
	p.Type(in["spokes.typed"], "9")
	p.Tap("button", in["spokes.keep"])
	p.See("20 to 5000 Hz")
	p.Type(in["spokes.typed"], "352,5")
	p.Tap("button", in["spokes.keep"])
	p.See("left 1 · 352.5 Hz")

	// One is slack: the wheel stops, wherever its state is told.
	p.tap(p.button(fill(in["spokes.linePick"], "line", "right 2 ")))
	p.Tap("button", in["spokes.slack"])
	p.See(fill(in["spokes.isSlack"], "spoke", "Right 2"))
	p.saved("spokes/" + hexOf("eight"))
	p.Reload() // nothing is lost
	p.See(fill(in["spokes.isSlack"], "spoke", "Right 2"))
	p.See("Right: 3 heard of 4.") // all that is told stands, so that the button stays where it is
	p.Tap("button", in["spokes.save"])
	p.See(in["spokes.savedSlack"])
	p.Tap("link", in["measure.record"])
	p.See("8 spokes heard, 1 slack")
	p.See(fill(in["spokes.foundSlack"], "which", "right 2"))
	server.Start()
	p.Online()
	p.onServer(server, `"what":"spoke_tension","spokes":[{"side":"left","n":1,"hz":352.5}`)
	if text := server.Export(); !strings.Contains(text, `{"side":"right","n":2,"hz":null}`) || !strings.Contains(text, `"item":"front_wheel.spokes"`) {
		t.Errorf("not all is on the server: %s", text)
	}
}
