// Package icon draws the app's icon: a wheel seen from the side, its tyre a little flat where it meets the ground.
package icon

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"

	"golang.org/x/image/vector"
)

var (
	paper  = color.RGBA{R: 0xFB, G: 0xF8, B: 0xF1, A: 0xFF}
	ink    = color.RGBA{R: 0x16, G: 0x15, B: 0x0F, A: 0xFF}
	accent = color.RGBA{R: 0x0A, G: 0x4F, B: 0x56, A: 0xFF}
)

// Rounded is the icon as shown where nothing is cut off it: a sheet with round corners.
func Rounded(size int) ([]byte, error) {
	s := newSheet(size)
	s.roundedSquare(0.22, paper)
	s.wheel(0.40)
	return s.encode()
}

// Full fills the square to its edges; phones that round corners themselves want it so.
func Full(size int) ([]byte, error) {
	s := newSheet(size)
	s.roundedSquare(0, paper)
	s.wheel(0.38)
	return s.encode()
}

// Maskable keeps the drawing within the circle of 80 % of the width that no mask may cut into.
func Maskable(size int) ([]byte, error) {
	s := newSheet(size)
	s.roundedSquare(0, paper)
	s.wheel(0.29)
	return s.encode()
}

// sheet is a square picture addressed from 0 to 1 both ways, y downwards.
type sheet struct {
	picture *image.RGBA
	size    float64
}

func newSheet(size int) *sheet {
	return &sheet{image.NewRGBA(image.Rect(0, 0, size, size)), float64(size)}
}

type point struct{ x, y float64 }

// paint fills the outlines together; one that runs the other way round cuts a hole.
func (s *sheet) paint(paint color.Color, outlines ...[]point) {
	bounds := s.picture.Bounds()
	pen := vector.NewRasterizer(bounds.Dx(), bounds.Dy())
	for _, outline := range outlines {
		for i, p := range outline {
			x, y := float32(p.x*s.size), float32(p.y*s.size)
			if i == 0 {
				pen.MoveTo(x, y)
			} else {
				pen.LineTo(x, y)
			}
		}
		pen.ClosePath()
	}
	pen.DrawOp = draw.Over
	pen.Draw(s.picture, bounds, image.NewUniform(paint), image.Point{})
}

func (s *sheet) encode() ([]byte, error) {
	var file bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	err := encoder.Encode(&file, s.picture)
	return file.Bytes(), err
}

func (s *sheet) roundedSquare(radius float64, paint color.Color) {
	var outline []point
	for corner, centre := range []point{{1 - radius, 1 - radius}, {radius, 1 - radius}, {radius, radius}, {1 - radius, radius}} {
		for step := 0; step <= 32; step++ {
			angle := (float64(corner) + float64(step)/32) * math.Pi / 2
			outline = append(outline, point{centre.x + radius*math.Cos(angle), centre.y + radius*math.Sin(angle)})
		}
	}
	s.paint(paint, outline)
}
