import { equal, test, until } from "../../ui/testing.ts";
import { DraftBox, type SaveState } from "./draft.ts";
import { Database, StorageTrouble } from "./idb.ts";

let count = 0;

function box(name: string): { drafts: DraftBox; states: SaveState["kind"][] } {
  const states: SaveState["kind"][] = [];
  return { drafts: new DraftBox(Promise.resolve(new Database(name)), (state) => states.push(state.kind)), states };
}

const name = (): string => `rimside-test-draft-${Date.now()}-${++count}`;

test("draft: a burst of typing is saved by its last letter, in few writes", async () => {
  const { drafts, states } = box(name());
  let stored = Promise.resolve(false);
  for (const text of ["7", "72", "72.", "72.5"]) stored = drafts.save("form", text);
  equal(await drafts.load("form"), "72.5", "before it is on the disk");
  equal(await stored, true);
  equal([await drafts.load("form"), states], ["72.5", ["saving", "saved"]]);
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
