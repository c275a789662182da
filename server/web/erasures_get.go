package web

import (
	"net/http"

	"rimside/store/sqlite"
)

// heldLine is one device's erasures that wait, in short.
type heldLine struct {
	Device string `json:"device"`
	Count  int    `json:"count"` // records
}

// heldErasures are the same with all that is needed to agree: whoever does writes an entry of kind agreement with ids and recs.
type heldErasures struct {
	Device   string         `json:"device"`
	Label    string         `json:"label"`
	Since    int64          `json:"since"` // ms since 1970
	IDs      []string       `json:"ids"`
	Recs     []string       `json:"recs"`
	Kinds    map[string]int `json:"kinds"`
	Stopped  bool           `json:"stopped"`
	MayAgree bool           `json:"may_agree"` // the one that asks
}

func heldLines(held []sqlite.HeldErasures) []heldLine {
	lines := []heldLine{}
	for _, each := range held {
		if !each.Stopped {
			lines = append(lines, heldLine{each.Device, len(each.IDs)})
		}
	}
	return lines
}

// erasuresGet lists the erasures that wait until a second phone, or the computer itself, agrees.
func (a *app) erasuresGet(w http.ResponseWriter, r *http.Request) {
	held, err := a.book.Held(r.Context(), via(r))
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	devices, err := a.book.Devices(r.Context())
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	labels := map[string]string{}
	for _, each := range devices {
		labels[each.ID] = each.Label
	}
	shown := []heldErasures{}
	for _, each := range held {
		shown = append(shown, heldErasures{each.Device, labels[each.Device], each.Since, each.IDs, each.Recs, each.Kinds, each.Stopped, each.MayAgree})
	}
	a.answerJSON(w, map[string][]heldErasures{"held": shown})
}
