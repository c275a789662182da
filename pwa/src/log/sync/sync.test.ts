import { equal, test, until } from "../../ui/testing.ts";
import { newRec } from "../book_log.ts";
import { FakeServer } from "./fake_server.test.ts";
import { t0 } from "../db/kit.test.ts";
import { logRow } from "../db/logs.ts";
import { MemoryTables } from "../db/memory.ts";
import { valueOf } from "../op/merge.ts";
import { added, book, edited, phone, type Phone } from "./phone.test.ts";
import type { SyncState } from "./sync.ts";

const name = async ({ log }: Phone, rec: string): Promise<unknown> => valueOf(await log.get(rec), "name");

const known = async ({ log }: Phone, server: FakeServer): Promise<{ count: number; cursor: number }> =>
  (await log.tables).read(["logs"], (tx) => logRow(tx, server.log));

test("sync: two phones and a server come to hold the same", async () => {
  const server = new FakeServer();
  const [ana, ben] = [phone(server), phone(server)];
  const tyre = await added(ana);
  await until("the count", () => ana.sync.state.unsent === 2);
  equal(ana.sync.state.phase, "never");
  equal([await ana.sync.round(), await ben.sync.round()], ["met", "met"]);
  equal([server.book, await name(ben, tyre.rec)], [book, "Ochre"]);
  const { phase, unsent, lastMet, server: at } = ana.sync.state;
  equal([phase, unsent, lastMet, at], ["idle", 0, t0, "car"]);
  await edited(ben, tyre.rec, { name: "Umber" });
  await ben.sync.round();
  await ana.sync.round();
  equal(await name(ana, tyre.rec), "Umber");
  equal((await ana.log.history(tyre.rec)).map((entry) => entry.via), ["carrier", undefined]);
});

test("sync: when nothing is new, a round is one request", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  await added(ana);
  await ana.sync.round();
  server.asked.length = 0;
  await ana.sync.round();
  equal(server.asked, ["GET api/book"]);
});

test("sync: an answer that is lost costs nothing, wherever it is lost", async () => {
  for (let lost = 1; lost <= 3; lost++) { // of what the server says of itself, the push, the pull
    const server = new FakeServer();
    const [ana, ben] = [phone(server), phone(server)];
    const tyre = await added(ben);
    await ben.sync.round();
    await added(ana);
    let rounds = 0;
    for (let outcome = ""; outcome !== "met"; rounds++) {
      server.failures.loseAnswer = rounds === 0 ? lost : 0;
      outcome = await ana.sync.round();
      if (outcome !== "met") equal([outcome, ana.sync.state.phase], ["unreachable", "unreachable"]);
    }
    equal([server.ops.length, ana.sync.state.unsent, await name(ana, tyre.rec), rounds], [4, 0, "Ochre", 2], `${lost} lost`);
  }
});

test("sync: a page is fetched again from its cursor when the phone dies in between", async () => {
  const server = new FakeServer();
  const [ana, ben] = [phone(server), phone(server)];
  for (let i = 0; i < 24; i++) await ana.log.save(Array.from({ length: 50 }, () => ({ rec: newRec(), kind: "tyre", set: { n: i } })));
  await ana.sync.round();
  equal([server.ops.length, server.asked.filter((each) => each === "POST api/ops").length <= 8], [1201, true]);
  const told: SyncState[] = [];
  ben.sync.on((state) => told.push(state));
  let pages = 0;
  const fetch = server.fetch;
  Object.assign(server, { fetch: (path: string, init: RequestInit) => {
    if (path.startsWith("api/ops?") && ++pages === 2) throw new TypeError("gone");
    return fetch(path, init);
  } });
  equal(await ben.sync.round(), "unreachable");
  equal(await known(ben, server), { ...(await known(ben, server)), cursor: 500, count: 500 });
  equal(await ben.sync.round(), "met");
  equal([pages, (await ben.log.all("tyre")).length], [4, 1200]);
  const fetching = told.filter((state) => state.phase === "fetching");
  equal(fetching.map(({ done, total }) => [done, total]), [[500, 1201], [250, 701], [701, 701]]);
});

test("sync: a wiped server is filled again, and keeps the book", async () => {
  const server = new FakeServer();
  const [ana, ben] = [phone(server), phone(server)];
  const [first, second] = [await added(ana), await added(ben)];
  for (const each of [ana, ben, ana]) await each.sync.round();
  server.wipe();
  for (const each of [ana, ben, ana]) equal(await each.sync.round(), "met");
  equal([server.book, server.ops.length], [book, 4]);
  equal([await name(ana, second.rec), await name(ben, first.rec)], ["Ochre", "Ochre"]);
});

test("sync: an old copy put back by hand is filled again, when it is shorter and when it has grown since", async () => {
  for (const grown of [0, 1, 5]) {
    const server = new FakeServer();
    const [ana, ben] = [phone(server), phone(server)];
    await added(ana);
    await ana.sync.round();
    const putBack = server.copy();
    await edited(ana, (await ana.log.all("tyre"))[0]?.rec ?? "", { name: "Umber" });
    await added(ana);
    await ana.sync.round();
    putBack();
    for (let i = 0; i < grown; i++) await added(ben);
    if (grown > 0) await ben.sync.round();
    for (const each of [ana, ben, ana]) equal(await each.sync.round(), "met");
    const want = 4 + (grown > 0 ? grown + 1 : 0);
    equal([server.ops.length, (await ana.log.all("tyre")).length, (await ben.log.all("tyre")).length], [want, 2 + grown, 2 + grown], `grown by ${grown}`);
  }
});

test("sync: a phone carries ops between servers that never meet", async () => {
  const [north, south] = [new FakeServer(), new FakeServer()];
  const [ana, ben, carrier] = [phone(north), phone(south), phone(north)];
  const tyre = await added(ana);
  await ana.sync.round();
  await carrier.sync.round();
  carrier.way.server = south;
  await carrier.sync.round();
  await ben.sync.round();
  equal(await name(ben, tyre.rec), "Ochre");
  south.asked.length = north.asked.length = 0;
  carrier.way.server = north;
  await carrier.sync.round();
  equal(north.asked, ["GET api/book"], "each log is remembered");
});

test("sync: one bad op among good ones blocks none, is listed, and is not sent again", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  await added(ana);
  await added(ana, { name: "x" }, "poison");
  await added(ana);
  equal([await ana.sync.round(), server.ops.length], ["met", 3]);
  const [bad] = await ana.log.rejected();
  equal([bad?.code, bad?.message, bad?.op?.kind, ana.sync.state.rejected, ana.sync.state.unsent], ["op_malformed", "poisoned", "poison", 1, 0]);
  server.asked.length = 0;
  await ana.sync.round();
  equal(server.asked, ["GET api/book"]);
  await ana.log.dismissRejected(bad?.id ?? "");
  await ana.sync.round();
  equal([(await ana.log.rejected()).length, ana.sync.state.rejected], [0, 0]);
  server.wipe();
  await ana.sync.round();
  equal([server.ops.length, (await ana.log.rejected()).map((each) => each.log)], [3, [server.log]], "another log says so itself");
});

test("sync: a request that the server does not take as a whole is halved down to the op it is about", async () => {
  const server = new FakeServer();
  server.failures.mostBytes = 3000;
  const ana = phone(server);
  for (let i = 0; i < 20; i++) await added(ana, { name: "x".repeat(200) });
  await added(ana, { name: "too large ".repeat(400) });
  equal([await ana.sync.round(), server.ops.length], ["met", 21]);
  equal((await ana.log.rejected()).map((each) => each.code), ["body_too_large"]);
});

test("sync: a server that refuses every push for the book's sake is not asked op by op", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  for (let i = 0; i < 20; i++) await added(ana);
  server.failures.status = 422;
  await ana.sync.round();
  equal([server.asked.length, (await ana.log.rejected()).length], [1, 0]);
});

test("sync: the same id with other content is kept on both sides and shown", async () => {
  const server = new FakeServer();
  const [ana, ben] = [phone(server), phone(server)];
  const tyre = await added(ana);
  await ana.sync.round();
  const text = (await ana.log.exportText()).split("\n").find((line) => line.includes("Ochre")) ?? "";
  await ben.log.importText(`{"rimside":1,"book":"${book}"}\n${text.replace("Ochre", "Umber")}`);
  for (let i = 0; i < 3; i++) equal(await ben.sync.round(), "met");
  equal([await name(ben, tyre.rec), await name(ana, tyre.rec)], ["Umber", "Ochre"]);
  const [one, ...more] = await ben.log.rejected();
  equal([one?.code, one?.op?.set["name"], more.length], ["other_content", "Ochre", 0]);
  equal([(await known(ben, server)).count, server.ops.length], [2, 2]);
});

test("sync: what this phone cannot read is listed, and the log counts as met", async () => {
  const server = new FakeServer();
  server.book = book;
  const id = newRec();
  server.ops.push({ id, rec: newRec(), at: 1, kind: "x", bytes: `{"id":"${id}","at":5,"kind":"x","rec":"${newRec()}","set":{}}` });
  const ana = phone(server);
  equal([await ana.sync.round(), (await ana.log.rejected()).map((each) => [each.id, each.code])], ["met", [[id, "at_out_of_range"]]]);
  server.asked.length = 0;
  await ana.sync.round();
  equal(server.asked, ["GET api/book"]);
});

test("sync: a difference that exchanging everything does not close is tried once, not for ever", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  await added(ana);
  await ana.sync.round();
  const fetch = server.fetch;
  const lying = async (path: string, init: RequestInit): Promise<Response> => {
    const response = await fetch(path, init);
    const text = await response.text();
    return new Response(text.replace(/"digest":"(.)/, (_, digit: string) => `"digest":"${(parseInt(digit, 16) ^ 1).toString(16)}`), { status: response.status });
  };
  Object.assign(server, { fetch: lying });
  const asked = async (): Promise<number> => {
    server.asked.length = 0;
    equal(await ana.sync.round(), "met");
    return server.asked.filter((each) => each === "POST api/ops").length;
  };
  equal([await asked(), await asked()], [1, 0]);
  await added(ana);
  equal([await asked(), await asked()], [1, 0], "both grew by the same op");
  Object.assign(server, { fetch });
  equal([await asked(), (await known(ana, server)).count], [0, 3]);
});

test("sync: another book is told, nothing is exchanged, and work goes on", async () => {
  const server = new FakeServer();
  server.book = newRec();
  const ana = phone(server);
  await added(ana);
  equal([await ana.sync.round(), ana.sync.state.phase, ana.sync.state.otherBook], ["otherBook", "otherBook", server.book]);
  equal([server.ops.length, server.asked], [0, ["GET api/book"]]);
  equal((await ana.log.all("tyre")).length, 1);
});

test("sync: two phones with a book each meet an empty server at the same moment", async () => {
  const server = new FakeServer();
  const [ana, ben] = [phone(server), phone(server, new MemoryTables(`rimside-${newRec()}`))];
  await added(ana);
  await added(ben);
  const outcomes = await Promise.all([ana.sync.round(), ben.sync.round()]);
  equal(outcomes.toSorted(), ["met", "otherBook"]);
});

test("sync: a phone that is not let in says so and keeps working", async () => {
  for (const status of [401, 403]) {
    const server = new FakeServer();
    const ana = phone(server);
    server.failures.status = status;
    await added(ana);
    equal([await ana.sync.round(), ana.sync.state.phase, ana.sync.state.unsent], ["notPaired", "notPaired", 2]);
    server.failures.status = 0;
    equal([await ana.sync.round(), ana.sync.state.phase], ["met", "idle"]);
  }
});

test("sync: portals, broken servers and no network are all the same: unreachable", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  await added(ana);
  const fetch = server.fetch;
  const page = (body: string, init?: ResponseInit): object => ({ fetch: () => Promise.resolve(new Response(body, init)) });
  for (const broken of [page("<html>Log in"), page("{}"), page("[]"), page("null"), page("x", { status: 502 }), page('{"book":7}')]) {
    Object.assign(server, broken);
    equal([await ana.sync.round(), ana.sync.state.unsent], ["unreachable", 2]);
  }
  Object.assign(server, { fetch });
  server.failures.down = true;
  equal(await ana.sync.round(), "unreachable");
  server.failures.down = false;
  equal(await ana.sync.round(), "met");
});

test("sync: this phone's clock is compared with the server's", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  for (const [ahead, want] of [[3 * 3_600_000, 3 * 3_600_000], [-400 * 86_400_000, -400 * 86_400_000], [61_000, 61_000], [-61_000, -61_000], [60_000, 0], [-59_000, 0]] as const) {
    server.failures.now = () => ana.clock.now - ahead;
    await ana.sync.round();
    equal(ana.sync.state.clockOff, want);
  }
});

test("sync: rounds never overlap, and a save during one causes another", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  await added(ana);
  const first = ana.sync.round();
  const tyre = await added(ana);
  equal(ana.sync.round() === first, true, "the running one");
  await first;
  equal([server.text().includes(tyre.rec), ana.sync.state.unsent], [true, 0]);
});

test("sync: erased values leave every holder, and a late phone does not bring them back", async () => {
  const server = new FakeServer();
  const [ana, ben, late] = [phone(server), phone(server), phone(server)];
  const person = await added(ana, { name: "Secret" }, "person");
  for (const each of [ana, ben, late]) await each.sync.round();
  await edited(late, person.rec, { name: "Secret too" });
  await ana.log.erase(person.rec, "person");
  for (const each of [ana, ben, late, ben, ana]) equal(await each.sync.round(), "met");
  for (const each of [ana, ben, late]) equal([(await each.log.exportText()).includes("Secret"), (await each.log.get(person.rec))?.erased], [false, true]);
  equal([server.text().includes("Secret"), server.ops.length], [false, 5]);
});

test("sync: members and digits that nobody here knows go through byte by byte", async () => {
  const server = new FakeServer();
  const [ana, ben] = [phone(server), phone(server)];
  const odd = `{"set":{"n":9007199254740993,"select":"},{"},"rec":"${newRec()}","id":"${newRec()}","at":${t0},"kind":"lamp", "glow":[{ }],"schema":9}`;
  await ana.log.ready;
  await ana.log.importText(`{"rimside":1,"book":"${book}"}\n${odd}`);
  await ana.sync.round();
  await ben.sync.round();
  equal((await ben.log.exportText()).split("\n").includes(odd), true);
});
