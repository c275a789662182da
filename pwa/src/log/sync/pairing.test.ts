import { equal, test, until } from "../../ui/testing.ts";
import { newRec } from "../book_log.ts";
import { FakeServer } from "./fake_server.test.ts";
import { MemoryTables } from "../db/memory.ts";
import { valueOf } from "../op/merge.ts";
import { added, book, phone, type Phone } from "./phone.test.ts";
import { ServerRefusal } from "./server_api.ts";

// Door plays the server's side: a code, one cookie, and who was shut out.
class Door {
  readonly server = new FakeServer();
  readonly out = new Set<string>();
  readonly sent: Record<string, unknown>[] = []; // of every pairing
  cookie = "";
  #told = new Set<string>();

  constructor() {
    const inside = this.server.fetch;
    const fetch = async (path: string, init: RequestInit): Promise<Response> => {
      if (path === "api/pair") return this.#pair(JSON.parse(init.body as string) as Record<string, unknown>);
      if (!this.out.has(this.cookie) && this.cookie !== "") return inside(path, init);
      const code = this.cookie !== "" && !this.#told.has(this.cookie) ? "shut_out" : "not_paired";
      this.#told.add(this.cookie);
      this.cookie = ""; // taken away with the answer
      return said(401, code);
    };
    Object.assign(this.server, { fetch });
  }

  #pair(sent: Record<string, unknown>): Response {
    this.sent.push(sent);
    if (sent["code"] !== "123456") return said(403, "wrong_code", "code");
    this.cookie = this.out.has(String(sent["device"])) ? newRec() : String(sent["device"]);
    return new Response(JSON.stringify({ device: this.cookie, book: this.server.book }));
  }
}

const said = (status: number, code: string, field = ""): Response => new Response(JSON.stringify({ error: { code, field, message: "" } }), { status });
const rounds = ({ sync }: Phone, want: string): Promise<void> => until(want, () => sync.state.phase === want);
const label = async ({ log }: Phone): Promise<unknown> => valueOf(await log.get(log.device), "label");

test("pairing: what was written before goes out, and the phone's record has the name it was given", async () => {
  const door = new Door();
  const ana = phone(door.server);
  await added(ana);
  equal([await ana.sync.round(), ana.sync.state.unsent, door.server.ops.length], ["notPaired", 2, 0]);
  const own = ana.log.device;
  await ana.sync.pairing.pair("123456", "Blue");
  await rounds(ana, "idle");
  equal([door.sent, ana.log.device === own, await label(ana)], [[{ code: "123456", label: "Blue", device: own }], true, "Blue"]);
  equal([ana.sync.state.unsent, door.server.ops.length, (await ana.log.clashing()).length], [0, 3, 0]);
});

test("pairing: a wrong code changes nothing", async () => {
  const door = new Door();
  const ana = phone(door.server);
  await added(ana);
  const code = await ana.sync.pairing.pair("000000", "Blue").catch((error: unknown) => (error instanceof ServerRefusal ? error.code : error));
  equal([code, await label(ana), await ana.sync.round()], ["wrong_code", "", "notPaired"]);
});

test("pairing: a phone without entries stays so, to take the server's book", async () => {
  const door = new Door();
  const ana = phone(door.server);
  door.server.book = newRec();
  await ana.sync.pairing.pair("123456", "Blue");
  await rounds(ana, "otherBook");
  equal([await ana.log.isEmpty(), ana.sync.state.otherBook], [true, door.server.book]);
});

test("pairing: who was shut out knows it for good, keeps all, and comes back as somebody new", async () => {
  const door = new Door();
  const tables = new MemoryTables(`rimside-${book}`);
  const ana = phone(door.server, tables);
  await added(ana);
  await ana.sync.pairing.pair("123456", "Blue");
  await rounds(ana, "idle");
  const old = ana.log.device;
  door.out.add(old);
  await added(ana, { name: "Later" });
  equal(await ana.sync.pairing.devices().catch((error: unknown) => (error as ServerRefusal).code), "shut_out", "whoever hears it first");
  equal([await ana.sync.round(), await phone(door.server, tables).sync.round()], ["shutOut", "shutOut"], "the server does not say so again");
  equal([ana.sync.state.unsent, (await ana.log.exportText()).includes("Later")], [1, true]);
  await ana.sync.pairing.pair("123456", "Blue");
  await rounds(ana, "idle");
  const again = phone(door.server, tables);
  await again.log.ready;
  equal([ana.log.device === old, again.log.device === ana.log.device], [false, true]);
  equal([await label(ana), ana.sync.state.unsent, door.server.text().includes("Later")], ["Blue", 0, true]);
  door.cookie = "";
  equal(await ana.sync.round(), "notPaired", "somebody new was never shut out");
});
