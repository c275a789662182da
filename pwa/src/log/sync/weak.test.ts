import { equal, rejected, test } from "../../ui/testing.ts";
import { inTime } from "./deadline.ts";
import { FakeServer } from "./fake_server.test.ts";
import { Pace } from "./pace.ts";
import { added, phone } from "./phone.test.ts";

test("weak link: a request carries less after one that did not arrive, and more again while it goes quickly", () => {
  const pace = new Pace({ first: 32, least: 4, most: 100 });
  const sizes = [pace.size];
  for (const step of ["quick", "quick", "failed", "failed", "slow", "quick", "neither"]) {
    if (step === "failed") pace.failed();
    else pace.took({ quick: 100, slow: 20_000, neither: 5_000 }[step] ?? 0);
    sizes.push(pace.size);
  }
  equal(sizes, [32, 64, 100, 50, 25, 12, 24, 24]);
  pace.took(100, 3); // a small one was quick: that says nothing
  equal(pace.size, 24);
  for (let i = 0; i < 9; i++) pace.failed();
  equal(pace.size, 4);
});

test("weak link: an answer that comes in pieces may take long, one in which nothing moves is given up", async () => {
  const drip = (pieces: number, every: number) => async (signal: AbortSignal): Promise<Response> => new Response(new ReadableStream({
    async start(stream) {
      for (let i = 0; i < pieces && !signal.aborted; i++) {
        await new Promise((resolve) => setTimeout(resolve, every));
        stream.enqueue(new Uint8Array([i]));
      }
      if (signal.aborted) stream.error(signal.reason);
      else stream.close();
    },
  }));
  equal((await inTime(drip(12, 40), 200)).body.length, 12);
  const silent = (signal: AbortSignal): Promise<Response> => new Promise((_, reject) => signal.addEventListener("abort", () => reject(signal.reason as Error)));
  equal(((await rejected(inTime(silent, 50))) as DOMException).name, "TimeoutError");
});

test("weak link: a photo goes in parts, and goes on where it was", async () => {
  const server = new FakeServer();
  server.can = ["parts"];
  const ana = phone(server);
  const name = await ana.sync.putPhoto(new Blob([new Uint8Array(300_000).fill(7)], { type: "image/jpeg" }));
  await added(ana);
  let [carried, breaks] = [0, 3];
  const fetch = server.fetch;
  Object.assign(server, { fetch: async (path: string, init: RequestInit) => {
    const answer = await fetch(path, init);
    if (init.method !== "PATCH") return answer;
    carried += (init.body as ArrayBuffer).byteLength;
    if (breaks > 0 && carried > (4 - breaks) * 60_000 && breaks-- > 0) throw new TypeError("gone"); // it came, the answer did not
    return answer;
  } });
  const outcomes = [];
  while (outcomes.at(-1) !== "met") outcomes.push(await ana.sync.round());
  equal([outcomes, server.blobs.get(name)?.byteLength, carried], [["unreachable", "unreachable", "unreachable", "met"], 300_000, 300_000]);
});

test("weak link: nothing is fetched when the phone only had something to send", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  await added(ana);
  await ana.sync.round();
  await added(ana);
  server.asked.length = 0;
  equal([await ana.sync.round(), server.asked, server.ops.length], ["met", ["GET api/book", "POST api/ops"], 3]);
});

test("photos: now and then the server is asked about those it should have, and gets again what it lost", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  const name = await ana.sync.putPhoto(new Blob(["one"], { type: "image/jpeg" }));
  await added(ana);
  await ana.sync.round();
  await ana.sync.round(); // the first question about it
  server.blobs.clear();
  await ana.sync.round();
  equal(server.blobs.size, 0, "within a day it is not asked again");
  ana.clock.now += 25 * 60 * 60 * 1000;
  equal([await ana.sync.round(), [...server.blobs.keys()]], ["met", [name]]);
});
