package icon

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"testing"
)

func decode(t *testing.T, file []byte, err error) image.Image {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

func drawn(t *testing.T, paint func(int) ([]byte, error), size int) image.Image {
	t.Helper()
	file, err := paint(size)
	return decode(t, file, err)
}

func TestIconsHaveTheSizeAskedForAndAreRepeatable(t *testing.T) {
	for name, paint := range map[string]func(int) ([]byte, error){"rounded": Rounded, "full": Full, "maskable": Maskable} {
		for _, size := range []int{180, 192} {
			first, err := paint(size)
			picture := decode(t, first, err)
			if got := picture.Bounds().Dx(); got != size || picture.Bounds().Dy() != size {
				t.Errorf("%s: %v, want %d square", name, picture.Bounds(), size)
			}
			again, err := paint(size)
			if err != nil || !bytes.Equal(first, again) {
				t.Errorf("%s %d: drawn twice, the files differ", name, size)
			}
		}
	}
}

func TestMaskableKeepsToTheSafeCircle(t *testing.T) {
	const size = 512
	picture := drawn(t, Maskable, size)
	for y := range size {
		for x := range size {
			out := math.Hypot(float64(x)+0.5-size/2, float64(y)+0.5-size/2) > 0.4*size
			if out && picture.At(x, y) != color.Color(paper) {
				t.Fatalf("something is drawn at %d,%d, outside the circle that masks leave", x, y)
			}
		}
	}
}

func TestFullLeavesNoTransparentCorner(t *testing.T) {
	if got := drawn(t, Full, 180).At(0, 0); got != color.Color(paper) {
		t.Errorf("corner %v, want paper", got)
	}
	if _, _, _, alpha := drawn(t, Rounded, 192).At(0, 0).RGBA(); alpha != 0 {
		t.Errorf("the rounded icon's corner is not transparent: alpha %d", alpha)
	}
}

// The tyre is wider beside the ground than the same height above the hub, and ends flat.
func TestTyreIsFlatWhereItMeetsTheGround(t *testing.T) {
	lowest, flat := 0.0, 0
	for i := range steps {
		_, y := tyreEdge(float64(i) * 2 * math.Pi / steps)
		if y > lowest {
			lowest, flat = y, 0
		}
		if y == lowest {
			flat++
		}
	}
	if lowest >= 1 || flat < 10 {
		t.Errorf("lowest edge %.3f held over %d of %d steps: not a flattened tyre", lowest, flat, steps)
	}
	if left, _ := tyreEdge(math.Pi * 0.3); left <= math.Cos(math.Pi*0.3) {
		t.Errorf("no bulge beside the ground: %.3f", left)
	}
}
