import { CalcClient, type Options, type WorkerLike } from "./calc-client.ts";
import type { FromWorker, ToWorker } from "./calc-protocol.ts";
import { equal, rejected, test, until } from "./ui/testing.ts";

// Played is a worker that answers when the test says so.
class Played implements WorkerLike {
  readonly asked: ToWorker[] = [];
  ended = false;
  onmessage: WorkerLike["onmessage"] = null;
  onerror: WorkerLike["onerror"] = null;

  postMessage(message: ToWorker): void {
    this.asked.push(message);
  }

  terminate(): void {
    this.ended = true;
  }

  say(message: FromWorker): void {
    this.onmessage?.(new MessageEvent("message", { data: message }));
  }

  // questions are the bodies asked so far.
  questions(): string[] {
    return this.asked.flatMap((each) => (each.kind === "ask" ? [each.body] : []));
  }

  answer(body: string, status = 200): void {
    const last = this.asked.at(-1);
    if (last === undefined || last.kind === "start") throw new Error("nothing was asked");
    this.say({ kind: "answer", id: last.id, status, body });
  }
}

function client(change: Partial<Options> = {}): { calc: CalcClient; workers: Played[]; states: string[]; troubles: string[] } {
  const workers: Played[] = [];
  const states: string[] = [];
  const troubles: string[] = [];
  const calc = new CalcClient({
    makeWorker: () => {
      const worker = new Played();
      workers.push(worker);
      return worker;
    },
    wasm: "https://example.test/calc.wasm",
    fetch: () => Promise.reject(new TypeError("no network")),
    onState: (state) => states.push(state.where),
    onTrouble: (details) => troubles.push(details),
    ...change,
  });
  return { calc, workers, states, troubles };
}

const last = (workers: Played[]): Played => {
  const worker = workers.at(-1);
  if (worker === undefined) throw new Error("no worker was made");
  return worker;
};

const json = (body: string, status = 200): Promise<Response> =>
  Promise.resolve(new Response(body, { status, headers: { "Content-Type": "application/json; charset=utf-8" } }));

test("calc client: questions wait for the start and are asked in order", async () => {
  const { calc, workers } = client();
  const answers = [calc.ask("air", { n: 1 }), calc.ask("leak", { n: 2 })];
  equal(last(workers).questions(), []);
  last(workers).say({ kind: "ready" });
  equal(last(workers).questions(), ['{"n":1}']);
  last(workers).answer("one");
  last(workers).answer("two", 422);
  equal(await Promise.all(answers), [{ status: 200, body: "one" }, { status: 422, body: "two" }]);
});

test("calc client: latest drops the older question and the overtaken answer, of its own name only", async () => {
  const { calc, workers } = client();
  last(workers).say({ kind: "ready" });
  const first = calc.latest("pressure", { n: 1 }); // asked at once
  const second = calc.latest("pressure", { n: 2 }); // waits, and is replaced
  const other = calc.latest("air", { n: 9 });
  const kept = calc.ask("pressure", { n: 8 });
  const third = calc.latest("pressure", { n: 3 });
  equal(await second, undefined);
  last(workers).answer("a"); // overtaken: n 3 waits
  equal(await first, undefined);
  last(workers).answer("b");
  last(workers).answer("c");
  last(workers).answer("d");
  equal(last(workers).questions(), ['{"n":1}', '{"n":9}', '{"n":8}', '{"n":3}']);
  equal([await other, await kept, await third].map((each) => each?.body), ["b", "c", "d"]);
});

test("calc client: an answer to another question is ignored", async () => {
  const { calc, workers } = client();
  last(workers).say({ kind: "ready" });
  const answer = calc.ask("air", {});
  last(workers).say({ kind: "answer", id: 999, status: 200, body: "stray" });
  last(workers).answer("right");
  equal((await answer).body, "right");
});

test("calc client: after a crash the worker starts again and the question is asked again", async () => {
  const { calc, workers, states, troubles } = client();
  last(workers).say({ kind: "ready" });
  const answer = calc.ask("air", { n: 1 });
  last(workers).say({ kind: "crashed", reason: "trap" });
  equal([workers.length, workers[0]?.ended], [2, true]);
  last(workers).say({ kind: "ready" });
  last(workers).answer("well");
  equal([(await answer).body, states, troubles], ["well", [], []]);
});

test("calc client: a question that breaks it twice is refused, with details, and the server stands in", async () => {
  const fetch = (path: string): Promise<Response> => json(path === "api/calc" ? "[]" : '{"by":"server"}');
  const { calc, workers, states, troubles } = client({ fetch });
  last(workers).say({ kind: "ready" });
  const poison = rejected(calc.ask("air", { n: 1 }));
  last(workers).say({ kind: "crashed", reason: "trap" });
  last(workers).say({ kind: "ready" });
  last(workers).say({ kind: "crashed", reason: "trap again" });
  equal(String(await poison).includes("trap again"), true);
  equal(await calc.ask("air", { n: 2 }), { status: 200, body: '{"by":"server"}' });
  equal([states, troubles, workers.length], [["server"], ["trap again"], 2]);
});

test("calc client: refused WASM goes to the server at once, and names the reason", async () => {
  const { calc, workers } = client({ fetch: () => json("[]") });
  last(workers).say({ kind: "refused", reason: "no WebAssembly" });
  await until("the server", () => calc.state.where === "server");
  equal([calc.state, await calc.describe(), workers.length], [{ where: "server", reason: "no WebAssembly" }, [], 1]);
});

test("calc client: without a server there are no sums, until it is back", async () => {
  let up = false;
  const fetch = (): Promise<Response> => (up ? json("{}") : Promise.reject(new TypeError("no network")));
  const { calc, workers, states } = client({ fetch });
  last(workers).say({ kind: "refused", reason: "x" });
  equal((await rejected(calc.ask("air", {}))) instanceof Error, true);
  equal(calc.state.where, "none");
  up = true;
  equal((await calc.ask("air", {})).status, 200);
  equal(states, ["none", "server"]);
});

test("calc client: a host of plain files is no server", async () => {
  const page = (): Promise<Response> => Promise.resolve(new Response("<h1>404", { status: 404, headers: { "Content-Type": "text/html" } }));
  const { calc, workers } = client({ fetch: page });
  last(workers).say({ kind: "refused", reason: "x" });
  await until("no sums", () => calc.state.where === "none");
});

test("calc client: a browser without workers", async () => {
  const makeWorker = (): WorkerLike => {
    throw new Error("no workers");
  };
  const { calc } = client({ makeWorker, fetch: () => json("[]") });
  equal((await calc.ask("air", {})).body, "[]");
});

test("calc client: a worker that does not answer is started again", async () => {
  const { calc, workers } = client({ patience: 20 });
  last(workers).say({ kind: "ready" });
  const answer = calc.ask("air", {});
  await until("a second worker", () => workers.length === 2);
  last(workers).say({ kind: "ready" });
  last(workers).answer("late but there");
  equal((await answer).body, "late but there");
});

test("calc client: a panic is answered and told with its stack", async () => {
  const { calc, workers, troubles } = client();
  last(workers).say({ kind: "ready" });
  const answer = calc.ask("air", {});
  last(workers).answer('{"error":{"code":"panic","field":"","message":"index out of range","details":"line 1\\nline 2"}}', 500);
  equal([(await answer).status, troubles], [500, ["index out of range\nline 1\nline 2"]]);
});
