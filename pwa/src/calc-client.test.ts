import { CalcClient, type Options, type WorkerLike } from "./calc-client.ts";
import type { FromWorker, ToWorker } from "./calc-protocol.ts";
import type { Requests } from "./contract/contract.ts";
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

  // questions are the numbers asked about so far.
  questions(): unknown[] {
    return this.asked.flatMap((each) => {
      if (each.kind !== "ask") return [];
      const { kpa, days, rider_kg } = JSON.parse(each.body) as Record<string, unknown>;
      return [kpa ?? days ?? rider_kg];
    });
  }

  answer(answer: unknown, status = 200): void {
    const last = this.asked.at(-1);
    if (last === undefined || last.kind === "start") throw new Error("nothing was asked");
    this.say({ kind: "answer", id: last.id, status, body: JSON.stringify(answer) });
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

// Questions that differ by one number, and what was answered: the client passes on whatever the calculator says.
const place = { c: 20, m: 0 };
const air = (kpa: number): Requests["air"] => ({ kpa, from: place, to: place });
const leak = (days: number): Requests["leak"] => ({ first: { kpa: 250, ...place }, second: { kpa: 240, ...place }, days, ahead_days: 1, ahead: place });
const tyre = { label_mm: 40, sidewall: "glove", setup: "tubeless", hookless_ok: false } as const;
const rim = { bead_seat_mm: 622, inner_mm: 25, profile: "hooked" } as const;
const pressure = (rider_kg: number): Requests["pressure"] => ({
  rider_kg, bike_kg: 11, front: { tyre, rim }, rear: { tyre, rim }, ground: [{ kind: "pea", share: 1 }], set: place, ride: place, gauge_error_kpa: 0, wet: false, firmness: 0,
});
const said = (result: { readonly answer: unknown } | undefined): unknown => result?.answer;

const json = (body: string, status = 200): Promise<Response> =>
  Promise.resolve(new Response(body, { status, headers: { "Content-Type": "application/json; charset=utf-8" } }));

test("calc client: questions wait for the start and are asked in order", async () => {
  const { calc, workers } = client();
  const answers = [calc.ask("air", air(1)), calc.ask("leak", leak(2))];
  equal(last(workers).questions(), []);
  last(workers).say({ kind: "ready" });
  equal(last(workers).questions(), [1]);
  const errors = [{ code: "out_of_bounds", field: "days", values: { min: 0.01 } }, { code: "missing", field: "ahead", values: {} }];
  last(workers).answer("one");
  last(workers).answer({ error: errors[0], errors }, 422);
  equal(await Promise.all(answers), [{ answer: "one", errors: [] }, { answer: undefined, errors }]);
});

test("calc client: latest drops the older question and the overtaken answer, of its own name only", async () => {
  const { calc, workers } = client();
  last(workers).say({ kind: "ready" });
  const first = calc.latest("pressure", pressure(1)); // asked at once
  const second = calc.latest("pressure", pressure(2)); // waits, and is replaced
  const other = calc.latest("air", air(9));
  const kept = calc.ask("pressure", pressure(8));
  const third = calc.latest("pressure", pressure(3));
  equal(await second, undefined);
  last(workers).answer("a"); // overtaken: n 3 waits
  equal(await first, undefined);
  last(workers).answer("b");
  last(workers).answer("c");
  last(workers).answer("d");
  equal(last(workers).questions(), [1, 9, 8, 3]);
  equal([await other, await kept, await third].map(said), ["b", "c", "d"]);
});

test("calc client: an answer to another question is ignored", async () => {
  const { calc, workers } = client();
  last(workers).say({ kind: "ready" });
  const answer = calc.ask("air", air(0));
  last(workers).say({ kind: "answer", id: 999, status: 200, body: '"stray"' });
  last(workers).answer("right");
  equal(said(await answer), "right");
});

test("calc client: after a crash the worker starts again and the question is asked again", async () => {
  const { calc, workers, states, troubles } = client();
  last(workers).say({ kind: "ready" });
  const answer = calc.ask("air", air(1));
  last(workers).say({ kind: "crashed", reason: "trap" });
  equal([workers.length, workers[0]?.ended], [2, true]);
  last(workers).say({ kind: "ready" });
  last(workers).answer("well");
  equal([said(await answer), states, troubles], ["well", [], []]);
});

test("calc client: a question that breaks it twice is refused, with details, and the server stands in", async () => {
  const fetch = (path: string): Promise<Response> => json(path === "api/health" ? "{}" : '{"by":"server"}');
  const { calc, workers, states, troubles } = client({ fetch });
  last(workers).say({ kind: "ready" });
  const poison = rejected(calc.ask("air", air(1)));
  last(workers).say({ kind: "crashed", reason: "trap" });
  last(workers).say({ kind: "ready" });
  last(workers).say({ kind: "crashed", reason: "trap again" });
  equal(String(await poison).includes("trap again"), true);
  equal(await calc.ask("air", air(2)), { answer: { by: "server" }, errors: [] });
  equal([states, troubles, workers.length], [["server"], ["trap again"], 2]);
});

test("calc client: refused WASM goes to the server at once, and names the reason", async () => {
  const { calc, workers } = client({ fetch: () => json("[]") });
  last(workers).say({ kind: "refused", reason: "no WebAssembly" });
  await until("the server", () => calc.state.where === "server");
  equal([calc.state, said(await calc.ask("air", air(0))), workers.length], [{ where: "server", reason: "no WebAssembly" }, [], 1]);
});

test("calc client: without a server there are no sums, until it is back", async () => {
  let up = false;
  const fetch = (): Promise<Response> => (up ? json("{}") : Promise.reject(new TypeError("no network")));
  const { calc, workers, states } = client({ fetch });
  last(workers).say({ kind: "refused", reason: "x" });
  equal((await rejected(calc.ask("air", air(0)))) instanceof Error, true);
  equal(calc.state.where, "none");
  up = true;
  equal((await calc.ask("air", air(0))).errors, []);
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
  equal(said(await calc.ask("air", air(0))), []);
});

test("calc client: a worker that does not answer is started again", async () => {
  const { calc, workers } = client({ patience: 20 });
  last(workers).say({ kind: "ready" });
  const answer = calc.ask("air", air(0));
  await until("a second worker", () => workers.length === 2);
  last(workers).say({ kind: "ready" });
  last(workers).answer("late but there");
  equal(said(await answer), "late but there");
});

test("calc client: a panic is answered and told with its stack", async () => {
  const { calc, workers, troubles } = client();
  last(workers).say({ kind: "ready" });
  const answer = calc.ask("air", air(0));
  const errors = [{ code: "panic", field: "", values: { message: "index out of range", details: "line 1\nline 2" } }];
  last(workers).answer({ error: errors[0], errors }, 500);
  equal([await answer, troubles], [{ answer: undefined, errors }, ["index out of range\nline 1\nline 2"]]);
});

test("calc client: the same question as before is answered without asking again, another one is not", async () => {
  const { calc, workers } = client();
  last(workers).say({ kind: "ready" });
  const question = pressure(1);
  const first = calc.latest("pressure", question);
  last(workers).answer("a");
  equal([said(await first), said(await calc.latest("pressure", question))], ["a", "a"]);
  const other = calc.latest("pressure", pressure(2));
  last(workers).answer("b");
  equal([said(await other), last(workers).questions()], ["b", [1, 2]]);
});

test("calc client: a server's own error has no values and is told as one", async () => {
  const { calc, workers } = client({ fetch: (path) => (path === "api/health" ? json("{}") : json('{"error":{"code":"internal","field":"","message":"Broken."}}', 500)) });
  last(workers).say({ kind: "refused", reason: "x" });
  equal((await calc.ask("air", air(1))).errors.map(({ field, values }) => [field, values]), [["", {}]]);
});

test("calc client: the server answers until the own calculator is ready, and not after", async () => {
  const asked: string[] = [];
  const fetch = (path: string): Promise<Response> => (asked.push(path), json(`{"kpa":1}`));
  const { calc, workers, states } = client({ meanwhile: true, fetch });
  equal(said(await calc.ask("air", air(1))), { kpa: 1 });
  equal([asked, states], [["api/calc/air"], []]); // it is no outage
  last(workers).say({ kind: "ready" });
  const own = calc.ask("air", air(2));
  last(workers).answer({ kpa: 2 });
  equal([said(await own), asked.length], [{ kpa: 2 }, 1]);
});

test("calc client: a server that does not calculate is asked once, and the own calculator answers", async () => {
  let asked = 0;
  const { calc, workers } = client({ meanwhile: true, fetch: () => (asked++, json(`{"code":"not_paired"}`, 401)) });
  const [first, second] = [calc.ask("air", air(1)), calc.ask("air", air(2))];
  await until("the server to be asked", () => asked === 1);
  await Promise.resolve();
  last(workers).say({ kind: "ready" });
  last(workers).answer({ kpa: 1 });
  await first;
  last(workers).answer({ kpa: 2 });
  equal([said(await second), asked], [{ kpa: 2 }, 1]);
});
