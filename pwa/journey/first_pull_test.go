package journey

import (
	"fmt"
	"testing"
	"time"
)

// BenchmarkFirstPull is the time from opening the app on a new phone to having all of a book of 10,000 entries, and the
// longest that the page was deaf meanwhile.
func BenchmarkFirstPull(b *testing.B) {
	server := StartServer(b)
	for from := 0; from < 10_000; from += 500 {
		var ops []members
		for n := from; n < from+500; n++ {
			ops = append(ops, members{
				"id": fmt.Sprintf("%032x", n+1), "at": 1790000000000 + n, "kind": "pressure_set", "rec": fmt.Sprintf("%032x", n%3000+1),
				"set": members{"side": "front", "gauge_kpa": 180 + n%60, "c": 18, "m": 240}, "author": "", "device": "", "schema": 1,
			})
		}
		server.push(teamBook, ops)
	}
	browser := OpenBrowser(b)
	var slowest time.Duration
	longest, fetched := 0.0, 0.0
	for b.Loop() {
		start := time.Now()
		p := browser.OpenApart(server.URL(), `
			globalThis.longest = 0;
			let last = performance.now();
			setInterval(() => { const now = performance.now(); globalThis.longest = Math.max(globalThis.longest, now - last); last = now; }, 0);
			globalThis.told = new Set();
			globalThis.fetched = 0;
			new MutationObserver(() => {
				const line = document.querySelector("rs-status")?.textContent ?? "";
				if (line.includes("fetching") && told.size === 0) globalThis.begun = performance.now();
				if (line.includes("fetching")) told.add(line);
				if (line.includes("last synced") && told.size > 0) globalThis.fetched ||= performance.now() - begun;
			})
				.observe(document, {subtree: true, childList: true, characterData: true});`)
		p.Eventually("the whole book", func() bool {
			return Eval[bool](p, `document.querySelector("rs-status")?.textContent.includes("last synced") ?? false`)
		})
		slowest = max(slowest, time.Since(start))
		if held := Eval[int](p, countOps); held != 10_000 {
			b.Errorf("%d entries are on the phone", held)
		}
		fetched = max(fetched, Eval[float64](p, "globalThis.fetched"))
		longest = max(longest, Eval[float64](p, "globalThis.longest"))
		if Eval[int](p, "told.size") == 0 {
			b.Error("no progress was told")
		}
		p.Close()
	}
	b.ReportMetric(slowest.Seconds(), "s-slowest")
	b.ReportMetric(fetched/1000, "s-slowest-fetch")
	b.ReportMetric(longest, "ms-deaf")
}

const countOps = `(async () => {
	for (const {name} of await indexedDB.databases()) {
		const db = await new Promise((resolve) => indexedDB.open(name).onsuccess = (event) => resolve(event.target.result));
		const count = await new Promise((resolve) => db.transaction("ops").objectStore("ops").count().onsuccess = (event) => resolve(event.target.result));
		db.close();
		return count;
	}
	return 0;
})()`
