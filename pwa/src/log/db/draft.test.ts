import { equal, test, until } from "../../ui/testing.ts";
import { unsavedName } from "./unsaved.ts";
import { DraftBox, type SaveState } from "./draft.ts";
import { Database, StorageTrouble } from "./idb.ts";

let count = 0;

function box(name: string): { drafts: DraftBox; states: SaveState["kind"][] } {
  const states: SaveState["kind"][] = [];
  return { drafts: new DraftBox(Promise.resolve(new Database(name)), (state) => states.push(state.kind)), states };
}

const name = (): string => `rimside-test-draft-${Date.now()}-${++count}`;

test("draft: a burst of typing is saved by its last letter", async () => {
  const { drafts, states } = box(name());
  let stored = Promise.resolve(false);
  for (const text of ["7", "72", "72.", "72.5"]) stored = drafts.save("form", text);
  equal(await drafts.load("form"), "72.5", "before it is on the disk");
  equal(await stored, true);
  equal([await drafts.load("form"), states], ["72.5", ["saving", "saved"]]);
});

test("draft: no value waits in the page for an older one to reach the disk", async () => {
  const { drafts } = box(name());
  await drafts.save("warm", "up");
  const put = IDBObjectStore.prototype.put;
  const asked: unknown[] = [];
  IDBObjectStore.prototype.put = function (this: IDBObjectStore, row: { value?: unknown }, ...rest) {
    asked.push(row.value);
    return put.call(this, row, ...rest);
  };
  try {
    const first = drafts.save("form", "2").then(() => asked.push("on the disk"));
    await microtasks();
    const second = drafts.save("form", "240");
    await microtasks();
    equal(asked, ["2", "240"]);
    await Promise.all([first, second]);
  } finally {
    IDBObjectStore.prototype.put = put;
  }
});

// microtasks lets promises go on that nothing outside the page holds up: no request is answered meanwhile.
async function microtasks(): Promise<void> {
  for (let turn = 0; turn < 20; turn++) await Promise.resolve();
}

test("draft: what was typed when the page was taken away is there at the next start", async () => {
  const shared = name();
  const silent = new DraftBox(new Promise(() => undefined), () => undefined); // the database has not opened yet
  void silent.save("form", { inner: "240" });
  silent.leave();
  const { drafts } = box(shared);
  equal([await drafts.load("form"), localStorage.getItem(unsavedName)], [{ inner: "240" }, null]);
  equal(await box(shared).drafts.load("form"), { inner: "240" }, "now it is in the database");
});

test("draft: what was laid aside is gone when the page stays, and never beats what was typed later", async () => {
  const shared = name();
  const { drafts } = box(shared);
  await drafts.save("form", "warm");
  void drafts.save("form", "2");
  drafts.leave();
  const old = localStorage.getItem(unsavedName);
  equal(old?.includes(shared), true);
  await drafts.save("form", "240");
  await until("nothing laid aside", () => localStorage.getItem(unsavedName) === null);
  localStorage.setItem(unsavedName, old ?? ""); // a phone that lost its power had not removed it yet
  equal([await box(shared).drafts.load("form"), localStorage.getItem(unsavedName)], ["240", null]);
  localStorage.setItem(unsavedName, JSON.stringify([{ db: "another", name: "form", value: "x", at: Date.now() + 9 }]));
  equal(await box(shared).drafts.load("form"), "240", "another book's");
  localStorage.removeItem(unsavedName);
});

test("draft: other tabs hear, but not one that is being edited", async () => {
  const shared = name();
  const [here, there] = [box(shared), box(shared)];
  await here.drafts.save("warm", "up"); // both have joined the channel
  const heard: unknown[] = [];
  let editing = true;
  const stop = there.drafts.follow("form", (value) => heard.push(value), () => editing);
  await here.drafts.save("form", "one");
  await new Promise((resolve) => setTimeout(resolve, 100));
  equal(heard, [], "while editing");
  editing = false;
  await until("the held change", () => heard.length > 0);
  equal(heard, ["one"]);
  await here.drafts.save("other", "x");
  stop();
  await here.drafts.save("form", "two");
  await new Promise((resolve) => setTimeout(resolve, 100));
  equal(heard, ["one"], "another name, and after the end");
});

test("draft: what is typed here beats a change that waits", async () => {
  const shared = name();
  const [here, there] = [box(shared), box(shared)];
  await here.drafts.save("warm", "up");
  const heard: unknown[] = [];
  let editing = true;
  there.drafts.follow("form", (value) => heard.push(value), () => editing);
  await here.drafts.save("form", "theirs");
  await new Promise((resolve) => setTimeout(resolve, 50));
  await there.drafts.save("form", "mine");
  editing = false;
  await new Promise((resolve) => setTimeout(resolve, 600));
  equal([heard, await here.drafts.load("form")], [[], "mine"]);
});

test("draft: a phone that refuses is told, and what was typed stays", async () => {
  const states: SaveState[] = [];
  const refused = Promise.reject(new StorageTrouble("refused", "no"));
  const drafts = new DraftBox(refused, (state) => states.push(state));
  equal(await drafts.save("form", "kept"), false);
  equal([await drafts.load("form"), await drafts.load("nothing")], ["kept", undefined]);
  equal(states.map((state) => state.kind), ["saving", "failed", "failed"]);
});
