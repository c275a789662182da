package journey

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"strings"
	"testing"
)

// Goods with their size, count and owner; the page for the desk; own things.
func TestGoodsAndTheDesk(t *testing.T) {
	p := atTrip(t, gravel, members{"way": "air_bag", "legs_us": false})
	in := words(t)
	p.See(in["trip.goodsNone"])
	put := func(kind, size, count string) {
		t.Helper()
		p.Choose(in["trip.goodKind"], in["good."+kind])
		name := in["good."+kind]
		if size != "" {
			p.Type(name+" · "+in["goodSize."+map[string]string{"cartridge": "grams", "power_bank": "wh", "sealant": "ml"}[kind]], size)
		}
		p.Type(name+" · "+in["trip.goodCount"], count)
	}
	p.Choose(in["trip.goodKind"], in["good.cartridge"])
	p.See("Read the grams on it.")
	p.See("1 to decide")
	p.Type(in["good.cartridge"]+" · "+in["goodSize.grams"], "abc")
	p.See("That is not a number.")
	p.Reload()
	p.Eventually("what was typed", func() bool { return p.Value(in["good.cartridge"]+" · "+in["goodSize.grams"]) == "abc" })
	p.Type(in["good.cartridge"]+" · "+in["goodSize.grams"], "16 g")
	p.Type(in["good.cartridge"]+" · "+in["trip.goodCount"], "4")
	p.See("Hold only, with the airline’s approval to show")
	put("power_bank", "74", "3")
	p.See("At most 2 power banks for each person.")
	p.Type(in["good.power_bank"]+" · "+in["trip.goodCount"], "2")
	p.See("Cabin only, at most 2")
	put("alcohol", "", "1")
	p.See(in["goodWhy.burns"])
	put("sealant", "60", "1")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("goods at " + size.Name)
	})
	p.Shot("packing-goods")
	p.Tap("link", in["trip.desk"])
	p.See("4 × " + in["good.cartridge"] + ", 16 g")
	text := p.Text()
	at := func(words string) int {
		t.Helper()
		place := strings.Index(text, words)
		if place < 0 {
			t.Errorf("the desk's page does not say %q: %s", words, text)
		}
		return place
	}
	bag, cabin, none := at(in["deskPlace.bag"]), at(in["deskPlace.cabin"]), at(in["deskPlace.none"])
	for words, between := range map[string][2]int{
		"4 × " + in["good.cartridge"]: {bag, cabin}, "1 × " + in["good.sealant"]: {bag, cabin}, "2 × " + in["good.power_bank"]: {cabin, none}, "1 × " + in["good.alcohol"]: {none, len(text)},
	} {
		if place := at(words); place < between[0] || place > between[1] {
			t.Errorf("%q stands at the wrong place: %s", words, text)
		}
	}
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("the desk's page at " + size.Name)
	})
	p.Shot("packing-desk")
	p.Tap("link", in["recKind.trip"])
	p.unfold(in["trip.item"])
	p.Type(in["trip.itemName"], "Shoes 👟 נעליים")
	p.Type(in["trip.itemKg"], "0,9")
	p.Type(in["trip.itemCm"], "abc")
	p.Tap("button", in["trip.itemAdd"])
	p.See("That is not a number.")
	p.Type(in["trip.itemCm"], "70")
	p.Tap("button", in["trip.itemAdd"])
	p.See("Together 0.9 kg; the largest 70 cm")
}

// As-built inside the list: figures, run-out, a photo; ticked empty it says what is missing; on arrival the figures stand at their step, and
// a rotor is held against its own number.
func TestAsBuiltStaysInPacking(t *testing.T) {
	p := atTrip(t, gravel, members{"way": "air_bag", "legs_us": false})
	in := words(t)
	p.Eventually("the first step", func() bool { return p.next() == in["step.as_built"] })
	p.Tap("button", in["trip.how"])
	p.See("Not written down: ")
	p.Type(in["measureSlot.saddle"], "742")
	p.Type("Rotor run-out, Front", "abc")
	p.Tap("button", in["trip.asBuiltSave"])
	p.Eventually("the fault", func() bool { return strings.Contains(p.Text(), "not a number") })
	p.Type("Rotor run-out, Front", "0.3")
	p.Reload()
	p.Tap("button", in["trip.how"])
	p.Eventually("what was typed", func() bool { return p.Value(in["measureSlot.saddle"]) == "742" })
	p.Tap("button", in["trip.asBuiltSave"])
	p.See("Saddle height 742 mm")
	p.bringFile(in["trip.photo"], "bike.jpg", testPicture(t))
	p.See("1 photo")
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("as built at " + size.Name)
	})
	p.Shot("packing-as-built")
	p.done()
	p.doUntil(in["step.front_spacer"])
	p.Tap("link", in["trip.arrival"])
	p.Eventually("the arrival", func() bool { return p.next() == in["step.unpack"] })
	p.doUntil(in["step.front_rotor_true"])
	p.Tap("button", in["trip.how"])
	p.See("As built: rotor run-out 0.3 mm")
	p.Type(in["trip.runoutNow"], "0.9")
	p.Tap("button", in["trip.asBuiltSave"])
	p.See("Before 0.3 mm, now 0.9 mm: bent on the way. Do not ride it.")
}

// testPicture is a small photo.
func testPicture(t *testing.T) string {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 40, 30))
	for x := range 40 {
		img.Set(x, 10, color.RGBA{200, 120, 20, 255})
	}
	var raw bytes.Buffer
	if err := jpeg.Encode(&raw, img, nil); err != nil {
		t.Fatal(err)
	}
	return raw.String()
}
