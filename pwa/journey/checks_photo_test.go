package journey

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"strings"
	"testing"
)

// A photo of twelve megapixels is made small on the phone, and says nothing of where it was taken.
func TestAPhotoIsMadeSmallAndTellsNoPlace(t *testing.T) {
	p, server := atChecks(t, builds[0])
	in := words(t)
	p.tap(p.link(in["checks.short.crash"]))
	p.tap(p.firstButton(strings.Split(in["checks.findOf"], "{")[0]))
	p.bringFile(in["checks.photo"], "note.txt", "no picture")
	p.See(in["checks.photoFault.type"])
	p.bringFile(in["checks.photo"], "broken.jpg", "\xff\xd8\xff no picture either")
	p.See(in["checks.photoFault.unreadable"])
	p.bringFile(in["checks.photo"], "large.jpg", photoWithPlace(t))
	p.Eventually("the photo", func() bool { return Eval[bool](p, `document.querySelector("rs-photo-item img")?.naturalWidth > 0`) })
	kept := p.keptPhoto()
	small, err := jpeg.DecodeConfig(bytes.NewReader(kept))
	if err != nil || small.Width != 1600 || small.Height != 1200 {
		t.Errorf("the photo is %d by %d (%v), want 1600 by 1200", small.Width, small.Height, err)
	}
	for _, place := range []string{"Exif", "GPSPLACE", "Photoshop"} {
		if bytes.Contains(kept, []byte(place)) {
			t.Errorf("the photo still tells %s", place)
		}
	}
	p.Shot("checks-photo")
	p.atEachStation(nil)
	p.Tap("button", in["checks.finish"])
	p.Find("heading", in["ready.state.stop"])
	server.Start()
	p.Online()
	p.onServer(server, `"kind":"photo"`)
}

// keptPhoto is the one photo in the phone's own store.
func (p *Page) keptPhoto() []byte {
	p.t.Helper()
	text := Eval[string](p, `new Promise((resolve, reject) => {
		const request = indexedDB.open("rimside-" + localStorage.getItem("rimside-book"));
		request.onerror = () => reject(request.error);
		request.onsuccess = () => {
			const db = request.result;
			const rows = db.transaction("photos").objectStore("photos").getAll();
			rows.onsuccess = () => {
				db.close();
				const bytes = new Uint8Array(rows.result[0].bytes);
				let text = "";
				for (const byte of bytes) text += String.fromCharCode(byte);
				resolve(btoa(text));
			};
		};
	})`)
	kept, err := base64.StdEncoding.DecodeString(text)
	if err != nil {
		p.t.Fatal(err)
	}
	return kept
}

// photoWithPlace is a photo as cameras write them: large, and with the place noted beside it.
func photoWithPlace(t testing.TB) string {
	t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, 4000, 3000))
	for y := range 3000 {
		for x := range 4000 {
			picture.SetRGBA(x, y, color.RGBA{uint8(x / 16), uint8(y / 12), uint8((x + y) / 28), 255})
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, picture, nil); err != nil {
		t.Fatal(err)
	}
	note := "Exif\x00\x00GPSPLACE 46.5 N 7.9 E"
	size := len(note) + 2
	return out.String()[:2] + "\xff\xe1" + string([]byte{byte(size >> 8), byte(size)}) + note + out.String()[2:]
}

// A full phone keeps the finding, and says that the photo is not kept.
func TestAFullPhoneSaysThatAPhotoIsNotKept(t *testing.T) {
	server := TeamServer(StartServer(t), builds[0].deeds()...)
	in := words(t)
	p := OpenBrowser(t).Open(server.URL()+"#/checks", `
		const put = IDBObjectStore.prototype.put;
		IDBObjectStore.prototype.put = function(...args) {
			if (this.name === "photos" && globalThis.full) throw new DOMException("no room", "QuotaExceededError");
			return put.apply(this, args);
		};
		globalThis.full = true;`)
	p.Tap("link", in["checks.short.after"])
	p.tap(p.firstButton(strings.Split(in["checks.findOf"], "{")[0]))
	p.Type(in["checks.words"], "a cut")
	p.bringFile(in["checks.photo"], "large.jpg", photoWithPlace(t))
	p.See(in["checks.photoFault.full"])
	p.Axe()
	Eval[bool](p, "globalThis.full = false, true")
	p.bringFile(in["checks.photo"], "large.jpg", photoWithPlace(t))
	p.Eventually("the photo", func() bool { return Eval[bool](p, `document.querySelector("rs-photo-item img")?.naturalWidth > 0`) })
	p.NotSee(in["checks.photoFault.full"])
}

// BenchmarkOpenWithManyChecks is the time until Checks stands, at a quarter of the speed, after 2,000 walk-arounds with a
// finding in each tenth.
func BenchmarkOpenWithManyChecks(b *testing.B) {
	server := StartServer(b)
	all := []members{}
	for _, each := range builds[0].deeds() {
		all = append(all, each.op())
	}
	op := func(n int, kind string, set members) members {
		set["bike"] = hexOf("Ochre")
		set["day"] = "2026-07-01"
		return members{"id": fmt.Sprintf("%032x", 900000+n), "at": 1783000000000 + n, "kind": kind, "rec": fmt.Sprintf("%032x", 800000+n), "set": set, "author": "", "device": "", "schema": 1}
	}
	for n := range 2000 {
		var items []members
		for i := range 12 {
			items = append(items, members{"id": fmt.Sprintf("station.%d", i), "station": stations[i/2], "title": "Something to look at", "state": "ok"})
		}
		all = append(all, op(n, "check", members{"moment": "start", "items": items, "outcome": "nothing_found", "done": true}))
		if n%10 == 0 {
			all = append(all, op(5000+n, "finding", members{"item": "front_wheel.tyre", "station": "front_wheel", "severity": "note", "words": fmt.Sprintf("cut %d", n)}),
				op(9000+n, "finding_closed", members{"finding": fmt.Sprintf("%032x", 800000+5000+n), "done": "new tyre"}))
		}
	}
	for from := 0; from < len(all); from += 500 {
		server.push(teamBook, all[from:min(from+500, len(all))])
	}
	p := OpenBrowser(b).Open(server.URL() + "#/checks")
	p.See("Last look: ")
	var opens float64
	for b.Loop() {
		p.throttle(4)
		opens = max(opens, p.opensIn("checks", `document.body.innerText.includes("Last look: ")`))
		p.throttle(1)
	}
	b.ReportMetric(opens, "ms-opens")
}
