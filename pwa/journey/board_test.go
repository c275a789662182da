package journey

import "testing"

// aBoard is the daily use at a start line: everything on one phone's height.
func TestTheDailyUseFitsOnePhone(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.firstAnswers()
	p.Shot("board")
	p.ShotNow("board-now")
	p.Tap("button", in["place.ride"])
	_ = in
}
