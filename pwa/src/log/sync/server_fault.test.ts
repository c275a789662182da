import { equal, test } from "../../ui/testing.ts";
import { FakeServer } from "./fake_server.test.ts";
import { book, added, phone } from "./phone.test.ts";
import { refuse } from "../db/rejected.ts";

const pushes = (server: FakeServer): number => server.asked.filter((each) => each === "POST api/ops").length;

test("server's fault: it marks no op, is told on the screen, and everything goes once the server is well", async () => {
  // Servers of before said 422 when their book was damaged.
  for (const [status, code, told] of [[422, "damaged", "damaged"], [500, "damaged", "damaged"], [507, "full", "full"], [503, "read_only", "read_only"], [500, "new_code", "internal"]] as const) {
    const server = new FakeServer();
    const ana = phone(server);
    await added(ana);
    server.failures.push = { status, code };
    equal([await ana.sync.round(), ana.sync.state.phase, ana.sync.state.fault], ["fault", "fault", told], code);
    equal([ana.sync.state.unsent, await ana.log.rejected(), pushes(server)], [2, [], 1], code);
    server.failures.push = undefined;
    equal([await ana.sync.round(), server.ops.length, ana.sync.state.unsent], ["met", 2, 0], code);
  }
});

test("server's fault: what was refused is offered again to another program, and after the server was ill", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  const tyre = await added(ana);
  server.failures.mostBytes = 10; // so each op stands alone and is too large
  await ana.sync.round();
  equal([server.ops.length, (await ana.log.rejected()).map(({ code }) => code)], [0, ["body_too_large", "body_too_large"]]);
  server.failures.mostBytes = 8 << 20;
  await ana.sync.round();
  equal(server.ops.length, 0, "nothing has changed: it is not asked again and again");
  server.version = "next";
  equal([await ana.sync.round(), server.ops.length, await ana.log.rejected()], ["met", 2, []]);

  const tables = await ana.log.tables;
  await ana.log.save([{ rec: tyre.rec, kind: "tyre", set: { name: "Umber" } }]);
  server.failures.push = { status: 507, code: "full" };
  await ana.sync.round();
  const [last] = await tables.read(["ops"], async (tx) => (await tx.keys("ops")).filter((id) => server.ops.every((row) => row.id !== id)));
  await tables.write(["rejected"], (tx) => refuse(tx, server.log, [{ id: last ?? "", code: "other_content", message: "" }]));
  server.failures.push = undefined;
  equal([await ana.sync.round(), server.ops.length], ["met", 3]);
});

test("server's fault: what an app of before noted as refused, and was the server's fault, goes again", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  await added(ana);
  const tables = await ana.log.tables;
  const ids = await tables.read(["ops"], (tx) => tx.keys("ops"));
  await tables.write(["rejected"], (tx) => refuse(tx, server.log, ids.map((id) => ({ id, code: "damaged", message: "" }))));
  equal([await ana.sync.round(), server.ops.length, await ana.log.rejected()], ["met", 2, []]);
});

test("server's fault: what a proxy does not let through waits, and the rest goes on", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  await added(ana);
  server.failures.push = { status: 413, code: "" };
  equal([await ana.sync.round(), ana.sync.state.fault, ana.sync.state.unsent, await ana.log.rejected()], ["fault", "too_small", 2, []]);
  server.failures.push = undefined;
  equal([await ana.sync.round(), ana.sync.state.unsent, ana.sync.state.phase], ["met", 0, "idle"]);
});

test("server's fault: a page that was damaged is not taken, and asked for again", async () => {
  const server = new FakeServer();
  server.can = ["page_hash"];
  const [ana, ben] = [phone(server), phone(server)];
  await added(ana);
  await ana.sync.round();
  server.flip = true;
  equal([await ben.sync.round(), ben.sync.state.fault, (await ben.log.all("tyre")).length], ["fault", "damaged_page", 0]);
  server.flip = false;
  equal([await ben.sync.round(), (await ben.log.all("tyre")).length], ["met", 1]);
});

test("server's fault: an op that its disk lost is sent again, and only that", async () => {
  const server = new FakeServer();
  server.can = ["wanted"];
  const ana = phone(server);
  for (let i = 0; i < 5; i++) await added(ana);
  await ana.sync.round();
  const all = server.ops.length;
  server.lose(server.ops[2]?.id ?? "");
  server.asked.length = 0;
  let sent = 0;
  const fetch = server.fetch;
  Object.assign(server, { fetch: (path: string, init: RequestInit) => {
    if (init.method === "POST") sent += (JSON.parse(init.body as string) as { ops: unknown[] }).ops.length;
    return fetch(path, init);
  } });
  equal([await ana.sync.round(), server.ops.length, sent, server.lost.size], ["met", all, 1, 0]);
  equal(server.book, book);
});
