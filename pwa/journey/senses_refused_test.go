package journey

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// A phone that lends no sense is told in words what to do instead, and the page goes on: the ground is chosen, the pitch is typed.
func TestRefusedSensesLeaveAWay(t *testing.T) {
	in := words(t)
	p := OpenBrowser(t, chromedp.Flag("use-fake-device-for-media-stream", true)).Open(TeamServer(StartServer(t), wheelOfEight()...).URL() + "#/wheels/" + hexOf("eight"))
	p.See("8 spokes heard")
	p.allow("microphone", "denied")
	p.Tap("link", in["spokes.open"])
	p.See(in["spokes.nothing"])
	p.Tap("button", in["spokes.listen"])
	p.See(in["spokes.denied"])
	p.Axe()
	p.Type(in["spokes.typed"], "352,5")
	p.Tap("button", in["spokes.keep"])
	p.See("left 1: 352.5 Hz")

	p, _ = Visit(t)
	p.firstAnswers()
	Eval[bool](p, `(DeviceMotionEvent.requestPermission = async () => "denied") !== undefined`) // as phones with iOS answer
	p.ground()
	p.Tap("button", in["ground.measure"])
	p.Type(in["gm.speed"], "24")
	p.Tap("button", fill(in["gm.start"], "n", "15"))
	p.See(in["gm.refused"])
	p.Axe()
	before := p.number(in["side.front"])
	p.Choose("Stretch 1: "+in["ground.what"], in["kind.walnut"])
	p.shut()
	p.Changed(in["side.front"], before)
}
