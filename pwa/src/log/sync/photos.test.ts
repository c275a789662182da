import { equal, test } from "../../ui/testing.ts";
import { FakeServer } from "./fake_server.test.ts";
import { added, phone, type Phone } from "./phone.test.ts";
import { hex, sha256 } from "../op/sha256.ts";

const jpeg = (text: string): Blob => new Blob([text], { type: "image/jpeg" });

test("photos: they go after the ops, once, and go on where they were", async () => {
  const server = new FakeServer();
  const [ana, ben] = [phone(server), phone(server)];
  const names = [await ana.sync.putPhoto(jpeg("one")), await ana.sync.putPhoto(jpeg("two"))];
  equal(names[0], hex(sha256(new TextEncoder().encode("one"))));
  await added(ana, { photo: names[0] ?? "" }, "finding");
  let puts = 0;
  const fetch = server.fetch;
  Object.assign(server, { fetch: (path: string, init: RequestInit) => {
    if (init.method === "PUT" && ++puts === 2) throw new TypeError("gone");
    return fetch(path, init);
  } });
  equal([await ana.sync.round(), server.ops.length, server.blobs.size], ["unreachable", 2, 1]);
  equal([await ana.sync.round(), server.blobs.size, puts], ["met", 2, 3]);
  await ana.sync.round();
  equal(puts, 3);
  await ben.sync.round();
  equal(await (await ben.sync.getPhoto(names[1] ?? ""))?.text(), "two");
  server.failures.down = true;
  equal(await (await ben.sync.getPhoto(names[1] ?? ""))?.text(), "two", "kept for when there is no signal");
  server.failures.down = false;
  equal(await ben.sync.getPhoto("0".repeat(64)), undefined);
});

test("photos: erasing drops those that nothing else names, and the server's word does too", async () => {
  const server = new FakeServer();
  const [ana, late] = [phone(server), phone(server)];
  const [lone, shared] = [await ana.sync.putPhoto(jpeg("lone")), await ana.sync.putPhoto(jpeg("shared"))];
  const finding = await added(ana, { photos: [lone, shared] }, "finding");
  await added(ana, { photo: shared }, "wheel");
  await late.sync.putPhoto(jpeg("lone"));
  await ana.sync.round();
  await ana.log.erase(finding.rec, "finding");
  const held = async (of: Phone): Promise<readonly string[]> => (await of.log.tables).read(["photos"], (tx) => tx.keys("photos"));
  equal(await held(ana), [shared]);
  server.dropped.add(lone);
  server.blobs.delete(lone);
  await ana.sync.round();
  equal([await late.sync.round(), await held(late)], ["met", []]);
});

test("photos: one that the server will never take is listed and not sent again", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  const name = await ana.sync.putPhoto(jpeg("\u0000"));
  await added(ana);
  equal([await ana.sync.round(), (await ana.log.rejected()).map((each) => [each.id, each.code, each.op])], ["met", [[name, "blob_wrong_type", undefined]]]);
  server.asked.length = 0;
  await ana.sync.round();
  equal(server.asked, ["GET api/book"]);
});

test("photos: one that was damaged on its way is not kept", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  const name = hex(sha256(new TextEncoder().encode("whole")));
  server.blobs.set(name, new TextEncoder().encode("half").buffer);
  equal(await ana.sync.getPhoto(name), undefined);
  equal(await (await ana.log.tables).read(["photos"], (tx) => tx.count("photos")), 0);
});
