import { equal, test } from "../../ui/testing.ts";
import { BookLog, newRec } from "../book_log.ts";
import { FakeServer } from "./fake_server.test.ts";
import { t0 } from "../db/kit.test.ts";
import { MemoryTables } from "../db/memory.ts";
import { Sync } from "./sync.ts";
import { startSync } from "./triggers.ts";

interface Play {
  readonly server: FakeServer;
  readonly log: BookLog;
  readonly page: Map<string, () => void>;
  readonly see: { visible: boolean };
  readonly rounds: () => Promise<number>; // since it was last asked
}

function play(): Play {
  const server = new FakeServer();
  const log = new BookLog(Promise.resolve(new MemoryTables(`rimside-${newRec()}`)), { now: () => t0 });
  const sync = new Sync(log, { fetch: server.fetch, now: () => t0 });
  const [page, see] = [new Map<string, () => void>(), { visible: true }];
  startSync(sync, log, {
    visible: () => see.visible,
    on: (event, hear) => page.set(event, hear),
    every: (ms, work) => page.set(`${ms}`, work),
  });
  const rounds = async (): Promise<number> => {
    for (let turn = 0; turn < 30; turn++) await new Promise((resolve) => setTimeout(resolve)); // the work is all in here: turns count, not time
    return server.asked.splice(0).filter((each) => each === "GET api/book").length;
  };
  return { server, log, page, see, rounds };
}

test("triggers: at the start, after a save, on coming into view, with the network, and every 30 s while seen", async () => {
  const { log, page, see, rounds } = play();
  equal(await rounds(), 1, "start");
  await log.save([{ rec: newRec(), kind: "tyre", set: { name: "x" } }]);
  equal(await rounds(), 1, "save");
  for (const event of ["visible", "online", "revived", "30000"]) {
    page.get(event)?.();
    equal(await rounds(), 1, event);
  }
  see.visible = false;
  page.get("30000")?.();
  equal(await rounds(), 0, "unseen");
  equal([...page.keys()], ["visible", "online", "revived", "30000"]);
});

test("triggers: a server that does not let this phone in is not asked again and again", async () => {
  const { server, log, page, rounds } = play();
  server.failures.status = 401;
  equal(await rounds(), 1, "start");
  await log.save([{ rec: newRec(), kind: "tyre", set: { name: "x" } }]);
  page.get("30000")?.();
  equal(await rounds(), 0, "a save, the rhythm");
  page.get("visible")?.();
  equal(await rounds(), 1, "coming into view");
  page.get("online")?.();
  equal(await rounds(), 1, "the network");
  server.failures.status = 0;
  page.get("online")?.();
  equal([await rounds(), server.ops.length], [1, 2], "let in");
  page.get("30000")?.();
  equal(await rounds(), 1, "the rhythm again");
});

test("triggers: many at once are two rounds at most", async () => {
  const { page, rounds } = play();
  await rounds();
  for (let i = 0; i < 10; i++) page.get("visible")?.();
  equal(await rounds(), 2);
});

test("triggers: a save is enough, whatever the screen does then", async () => {
  const { log, see, rounds } = play();
  await rounds();
  see.visible = false; // typed, and the phone is in the pocket
  await log.save([{ rec: newRec(), kind: "tyre", set: { name: "x" } }]);
  equal(await rounds(), 1);
});
