package journey

import (
	"testing"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// allow decides for the phone's owner whether the page may use one of its senses, such as "geolocation".
func (p *Page) allow(sense string, setting browser.PermissionSetting) {
	p.t.Helper()
	params := browser.SetPermissionParams{Permission: &browser.PermissionDescriptor{Name: sense}, Setting: setting}
	if _, err := chromedp.Call(p.ctx, browser.SetPermission, params); err != nil {
		p.t.Fatal(err)
	}
}

func (p *Page) stands(altitude *float64) {
	p.t.Helper()
	latitude, longitude, accuracy := 46.5, 9.8, 8.0
	params := emulation.SetGeolocationOverrideParams{Latitude: &latitude, Longitude: &longitude, Accuracy: &accuracy, Altitude: altitude}
	if _, err := chromedp.Call(p.ctx, emulation.SetGeolocationOverride, params); err != nil {
		p.t.Fatal(err)
	}
}

func TestAltitudeFromThePhone(t *testing.T) {
	in := words(t)
	server := StartServer(t)
	p := OpenBrowser(t).Open(server.URL())
	p.firstAnswers()
	p.air()

	p.allow("geolocation", "denied")
	p.Tap("button", in["altitude.ask"])
	p.See(in["altitude.refused"])
	p.allow("geolocation", "granted")
	p.stands(nil)
	p.Tap("button", in["altitude.ask"])
	p.See(in["altitude.none"])
	high := 1804.0
	p.stands(&high)
	p.Tap("button", in["altitude.ask"])
	p.See(fill(in["altitude.found"], "m", "1800"))
	p.holds(in["field.set.m"], "1800")
	p.Axe()
}
