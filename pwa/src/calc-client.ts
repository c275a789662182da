// The calculator behind a promise. It asks the worker one question at a time, so that a newer question can still take
// the place of one that waits; without a worker it asks the server; without either it says so.

import type { FromWorker, Said, ToWorker } from "./calc-protocol.ts";
import { panicDetails, resultOf } from "./calc-result.ts";
import { askServer, findServer, NoServer } from "./calc-server.ts";
import type { Name, Requests, Result } from "./contract/contract.ts";
import type { Calc, CalcState } from "./ui/screen.ts";

// WorkerLike is the part of Worker that is used, so that tests can play one.
export interface WorkerLike {
  postMessage(message: ToWorker): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

export interface Options {
  readonly makeWorker: () => WorkerLike; // may throw
  readonly wasm: string; // absolute URL
  readonly fetch: (path: string, init?: RequestInit) => Promise<Response>;
  readonly onState: (state: CalcState) => void;
  readonly onTrouble: (details: string) => void;
  readonly meanwhile?: boolean; // the server may answer until the worker is ready
  readonly patience?: number; // ms for one answer before the worker counts as dead
}

interface Question {
  readonly id: number;
  readonly name: Name;
  readonly body: string;
  readonly replaceable: boolean;
  tries: number;
  readonly resolve: (said: Said | undefined) => void;
  readonly reject: (error: unknown) => void;
}

export class CalcClient implements Calc {
  state: CalcState = { where: "own", reason: "" };
  readonly #options: Options;
  #worker: WorkerLike | undefined;
  #ready = false;
  #restarted = false;
  #waiting: Question[] = [];
  #asked: Question | undefined;
  #lent: Question | undefined; // with the server, until the worker is ready
  #lends: boolean;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #lastId = 0;
  readonly #newest = new Map<Name, { readonly request: object; readonly result: unknown }>(); // of latest

  constructor(options: Options) {
    this.#options = options;
    this.#lends = options.meanwhile === true;
    this.#start();
  }

  async ask<N extends Name>(name: N, request: Requests[N]): Promise<Result<N>> {
    const said = await this.#queue(name, JSON.stringify(request), false);
    if (said === undefined) throw new Error("a question that must be answered was dropped");
    return resultOf(said);
  }

  async latest<N extends Name>(name: N, request: Requests[N]): Promise<Result<N> | undefined> {
    const older = this.#waiting.filter((each) => each.replaceable && each.name === name);
    this.#waiting = this.#waiting.filter((each) => !older.includes(each));
    for (const each of older) each.resolve(undefined);
    const known = this.#newest.get(name);
    if (known?.request === request && this.#asked?.name !== name) return known.result as Result<N>;
    const said = await this.#queue(name, JSON.stringify(request), true);
    if (said === undefined) return undefined;
    const result: Result<N> = resultOf(said);
    if (said.status !== 500) this.#newest.set(name, { request, result });
    return result;
  }

  #queue(name: Name, body: string, replaceable: boolean): Promise<Said | undefined> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ id: ++this.#lastId, name, body, replaceable, tries: 0, resolve, reject });
      this.#next();
    });
  }

  // next asks the first that waits, when nothing is being asked.
  #next(): void {
    if (this.#asked !== undefined) return;
    if (this.state.where === "own" && !this.#ready) return void this.#lend();
    const question = this.#waiting.shift();
    if (question === undefined) return;
    this.#asked = question;
    if (this.state.where === "own") this.#askWorker(question);
    else void this.#askServer(question);
  }

  #askWorker(question: Question): void {
    question.tries++;
    const { id, name, body } = question;
    this.#worker?.postMessage({ kind: "ask", id, name, body });
    this.#expect("the calculator did not answer");
  }

  async #askServer(question: Question): Promise<void> {
    try {
      const said = await askServer(this.#options.fetch, question.name, question.body);
      this.#change("server", this.state.reason);
      this.#settle(question, said);
    } catch (error) {
      if (error instanceof NoServer) this.#change("none", this.state.reason);
      this.#asked = undefined;
      question.reject(error);
      this.#next();
    }
  }

  // lend has the server answer while the worker is still on its way: on a first visit that is a large file. Whoever is
  // ready first answers; a server that does not calculate is not asked again.
  async #lend(): Promise<void> {
    const question = this.#waiting[0];
    if (question === undefined || !this.#lends || this.#lent !== undefined) return;
    this.#lent = question;
    try {
      const said = await askServer(this.#options.fetch, question.name, question.body);
      if (said.status !== 200 && said.status !== 422) this.#lends = false;
      else if (this.#waiting.includes(question)) {
        this.#waiting = this.#waiting.filter((each) => each !== question);
        this.#answer(question, said);
      }
    } catch {
      this.#lends = false;
    }
    this.#lent = undefined;
    this.#next();
  }

  #settle(question: Question, said: Said): void {
    this.#asked = undefined;
    if (said.status === 500) this.#options.onTrouble(panicDetails(said.body));
    this.#answer(question, said);
    this.#next();
  }

  // An answer that a newer question has overtaken is stale: nobody wants to see it flash by.
  #answer(question: Question, said: Said): void {
    const stale = question.replaceable && this.#waiting.some((each) => each.replaceable && each.name === question.name);
    question.resolve(stale ? undefined : said);
  }

  #start(): void {
    try {
      const worker = this.#options.makeWorker();
      worker.onmessage = ({ data }) => {
        if (worker === this.#worker) this.#hear(data);
      };
      worker.onerror = (event) => {
        event.preventDefault();
        if (worker === this.#worker) this.#broke(event.message || "the worker could not be loaded");
      };
      this.#worker = worker;
      worker.postMessage({ kind: "start", wasm: this.#options.wasm });
      this.#expect("the calculator did not start");
    } catch (error) {
      void this.#giveUp(String(error)); // a browser without workers will not have them at a second try
    }
  }

  #hear(message: FromWorker): void {
    if (message.kind === "crashed") return this.#broke(message.reason);
    if (message.kind === "refused") return void this.#giveUp(message.reason);
    clearTimeout(this.#timer);
    if (message.kind === "ready") {
      this.#ready = true;
      this.#next();
    } else if (this.#asked?.id === message.id) {
      this.#restarted = false; // it works: the next crash has its own restart
      this.#settle(this.#asked, { status: message.status, body: message.body });
    }
  }

  #expect(complaint: string): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#broke(complaint), this.#options.patience ?? 20000);
  }

  // broke restarts the worker once and asks the open question again; a question that breaks it twice is refused.
  #broke(reason: string): void {
    const working = this.#ready;
    this.#stop();
    const question = this.#asked;
    this.#asked = undefined;
    if (question !== undefined && question.tries < 2) this.#waiting.unshift(question);
    else question?.reject(new Error(reason));
    if (this.#restarted) {
      if (working) this.#options.onTrouble(reason); // one that never started is told by the state alone
      void this.#giveUp(reason);
    } else {
      this.#restarted = true;
      this.#start();
    }
  }

  // giveUp does without the worker for good, and finds out whether the server can stand in.
  async #giveUp(reason: string): Promise<void> {
    this.#stop();
    let reachable = false;
    try {
      await findServer(this.#options.fetch);
      reachable = true;
    } catch {
      // said by the state
    }
    this.#change(reachable ? "server" : "none", reason);
    this.#next();
  }

  #stop(): void {
    clearTimeout(this.#timer);
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#ready = false;
  }

  #change(where: CalcState["where"], reason: string): void {
    if (this.state.where === where && this.state.reason === reason) return;
    this.state = { where, reason };
    this.#options.onState(this.state);
  }
}
