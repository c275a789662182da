package journey

import "fmt"

// stored is a draft as it stands in the database, as JSON; "null" when there is none.
func (p *Page) stored(draft string) string {
	p.t.Helper()
	return Eval[string](p, fmt.Sprintf(`new Promise(async (resolve, reject) => {
		const name = "rimside-" + localStorage.getItem("rimside-book");
		const made = (await indexedDB.databases()).some((each) => each.name === name);
		if (!made) return resolve("null"); // opening it now would make an empty one, in the app's way
		const request = indexedDB.open(name);
		request.onerror = () => reject(request.error);
		request.onsuccess = () => {
			const db = request.result;
			if (!db.objectStoreNames.contains("drafts")) { db.close(); return resolve("null"); }
			const row = db.transaction("drafts").objectStore("drafts").get(%q);
			row.onsuccess = () => { db.close(); resolve(JSON.stringify(row.result?.value ?? null)); };
			row.onerror = () => { db.close(); reject(row.error); };
		};
	})`, draft))
}
