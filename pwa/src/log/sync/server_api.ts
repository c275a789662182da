// The server as this phone speaks with it: requests, and what can become of them.

import {
  type Device, isDevices, isMissing, isNewCode, isPage, isPaired, isPushed, isStanding, type NewCode, type Page, type Pushed, type Standing,
} from "./answers.ts";
import { elementsOf } from "../op/raw.ts";

// ServerTrouble: no answer that can be understood. It may be the network, a portal's login page or a broken server.
export class ServerTrouble extends Error {
  constructor(cause: unknown) {
    super(cause instanceof Error ? cause.message : String(cause), { cause });
    this.name = "ServerTrouble";
  }
}

// ServerRefusal: the server understood and says no.
export class ServerRefusal extends Error {
  readonly status: number;
  readonly code: string;
  readonly field: string;

  constructor(status: number, { code, field, message }: { code: string; field: string; message: string }) {
    super(message);
    this.name = "ServerRefusal";
    this.status = status;
    this.code = code;
    this.field = field;
  }
}

export interface Pulled extends Page {
  readonly texts: readonly string[]; // of the ops, as received
}

export interface Means {
  readonly fetch: (path: string, init: RequestInit) => Promise<Response>;
  readonly base?: string; // where the server's "api/" is, relative to the page
  readonly shutOut?: () => Promise<void>; // hears that the server does not let this phone in any more: it says so only once
}

const patience = 30_000; // ms for an answer; a phone on a weak network may need it
const bodyPatience = 120_000; // ms when there is much to carry

export class ServerApi {
  readonly #means: Means;

  constructor(means: Means) {
    this.#means = means;
  }

  standing(wait = patience): Promise<Standing> {
    return this.#json("api/book", {}, wait, isStanding);
  }

  // push sends ops, given as their texts.
  push(book: string, log: string, ops: readonly string[]): Promise<Pushed> {
    const body = `{"book":${JSON.stringify(book)},"log":${JSON.stringify(log)},"ops":[${ops.join(",")}]}`;
    return this.#json("api/ops", posting(body), bodyPatience, isPushed);
  }

  pull(book: string, log: string, since: number): Promise<Pulled> {
    const query = new URLSearchParams({ book, log, since: String(since), limit: "500" });
    return this.#answer(`api/ops?${query.toString()}`, {}, bodyPatience, async (response) => {
      const text = await response.text();
      return { ...parsed(text, isPage), texts: elementsOf(text, "ops") };
    });
  }

  async missingBlobs(sha256: readonly string[]): Promise<readonly string[]> {
    return (await this.#json("api/blobs/missing", posting(JSON.stringify({ sha256 })), patience, isMissing)).missing;
  }

  putBlob(sha256: string, type: string, body: ArrayBuffer): Promise<void> {
    return this.#answer(`api/blobs/${sha256}`, { method: "PUT", headers: { "Content-Type": type }, body }, bodyPatience, async () => undefined);
  }

  getBlob(sha256: string): Promise<Blob> {
    return this.#answer(`api/blobs/${sha256}`, {}, bodyPatience, (response) => response.blob());
  }

  // pair gives the device that this phone counts as from now on.
  async pair(code: string, label: string, device: string): Promise<string> {
    return (await this.#json("api/pair", posting(JSON.stringify({ code, label, device })), patience, isPaired)).device;
  }

  newCode(): Promise<NewCode> {
    return this.#json("api/pair/code", posting("{}"), patience, isNewCode);
  }

  async devices(): Promise<readonly Device[]> {
    return (await this.#json("api/devices", {}, patience, isDevices)).devices;
  }

  renameDevice(id: string, label: string): Promise<void> {
    return this.#answer(`api/devices/${id}`, { ...posting(JSON.stringify({ label })), method: "PATCH" }, patience, async () => undefined);
  }

  shutOutDevice(id: string): Promise<void> {
    return this.#answer(`api/devices/${id}/revoke`, posting("{}"), patience, async () => undefined);
  }

  #json<T>(path: string, init: RequestInit, wait: number, fits: (answer: unknown) => answer is T): Promise<T> {
    return this.#answer(path, init, wait, async (response) => parsed(await response.text(), fits));
  }

  async #answer<T>(path: string, init: RequestInit, wait: number, read: (response: Response) => Promise<T>): Promise<T> {
    const giveUp = new AbortController();
    const timer = setTimeout(() => giveUp.abort(), wait);
    try {
      const response = await this.#means.fetch(`${this.#means.base ?? ""}${path}`, { ...init, cache: "no-store", signal: giveUp.signal });
      if (response.ok && !response.redirected) return await read(response);
      throw await refusal(response);
    } catch (error) {
      if (error instanceof ServerRefusal && error.code === "shut_out") await this.#means.shutOut?.();
      throw error instanceof ServerRefusal ? error : new ServerTrouble(error);
    } finally {
      clearTimeout(timer);
    }
  }
}

function posting(body: string): RequestInit {
  return { method: "POST", headers: { "Content-Type": "application/json" }, body };
}

// refusal reads an error. One that is not in the server's own form came from something in between.
async function refusal(response: Response): Promise<Error> {
  const { status } = response;
  const said = await response.json().then((body) => (body as { error?: unknown } | null)?.error, () => undefined);
  const { code, field, message } = (said ?? {}) as Record<string, unknown>;
  if (typeof code === "string") return new ServerRefusal(status, { code, field: text(field), message: text(message) });
  return status === 401 || status === 403 ? new ServerRefusal(status, { code: "", field: "", message: "" }) : new ServerTrouble(`status ${status}`);
}

const text = (value: unknown): string => (typeof value === "string" ? value : "");

function parsed<T>(text: string, fits: (answer: unknown) => answer is T): T {
  const answer: unknown = JSON.parse(text);
  if (!fits(answer)) throw new Error("an answer of another form");
  return answer;
}
