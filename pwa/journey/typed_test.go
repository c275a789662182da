package journey

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
)

// A page that is taken away in the very moment of a key loses nothing: neither the last letter nor the one before it,
// which is still on its way to the disk. No waiting for the status line here: this is the case in which nobody could.
func TestTypedInTheMomentOfLeaving(t *testing.T) {
	p, _ := Visit(t)
	in := words(t)
	p.addBike("Ochre", "45")
	p.follow("Front wheel: front of Ochre")
	for n := range 8 {
		p.Find(fields, in["recField.inner_mm"])
		want := fmt.Sprint(2400 + n) // nothing that could be saved: only the draft holds it
		for _, text := range []string{want[:1], want[:3], want} {
			callOn[bool](p, p.Find(fields, in["recField.inner_mm"]), fmt.Sprintf(`function() {
				this.value = %[1]q;
				this.dispatchEvent(new Event("input", {bubbles: true}));
				globalThis.leaving = %[2]t;
				if (globalThis.leaving) location.reload();
				return true;
			}`, text, text == want))
		}
		p.Eventually("the new page", func() bool {
			stands, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool]("globalThis.leaving === undefined && document.readyState === 'complete'"))
			return err == nil && stands // between two pages there is nobody to ask
		})
		p.holds(in["recField.inner_mm"], want)
	}
}
