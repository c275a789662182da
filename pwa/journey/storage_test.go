package journey

import "fmt"

// stored is a draft as it stands in the database, as JSON; "null" when there is none.
func (p *Page) stored(draft string) string {
	p.t.Helper()
	return Eval[string](p, fmt.Sprintf(`new Promise((resolve, reject) => {
		const request = indexedDB.open("rimside-" + localStorage.getItem("rimside-book"));
		request.onerror = () => reject(request.error);
		request.onsuccess = () => {
			const db = request.result;
			const row = db.transaction("drafts").objectStore("drafts").get(%q);
			row.onsuccess = () => { db.close(); resolve(JSON.stringify(row.result?.value ?? null)); };
			row.onerror = () => { db.close(); reject(row.error); };
		};
	})`, draft))
}
