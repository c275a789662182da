// The server as this phone speaks with it: requests, and what can become of them.

import {
  type Device, type HeldErasures, isDevices, isHeld, isMissing, isNewCode, isPage, isPaired, isPart, isPushed, isAbout, isVisits, isWanted, type NewCode, type Page, type Part, type Pushed,
  type About, type Visit, type Wanted,
} from "./answers.ts";
import { inTime, type Patience } from "./deadline.ts";
import { elementsOf } from "../op/raw.ts";

// ServerTrouble: no answer that can be understood. It may be the network, a portal's login page or a broken server.
export class ServerTrouble extends Error {
  readonly status: number; // what something in between answered, 0 for nothing

  constructor(cause: unknown, status = 0) {
    super(cause instanceof Error ? cause.message : String(cause), { cause });
    this.name = "ServerTrouble";
    this.status = status;
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

// damagedPage says that a page of ops came otherwise than the server wrote it.
export const damagedPage = "a damaged page";

export interface Pulled extends Page {
  readonly texts: readonly string[]; // of the ops, as received
}

export interface Means {
  readonly fetch: (path: string, init: RequestInit) => Promise<Response>;
  readonly base?: string; // where the server's "api/" is, relative to the page
  readonly shutOut?: () => Promise<void>; // hears that the server does not let this phone in any more: it says so only once
}

const patience = 30_000; // ms in which something has to move; a phone on a weak network may need it

export class ServerApi {
  readonly #means: Means;

  constructor(means: Means) {
    this.#means = means;
  }

  about(wait = patience): Promise<About> {
    return this.#json("api/book", {}, wait, isAbout);
  }

  // push sends ops, given as their texts.
  push(book: string, log: string, ops: readonly string[]): Promise<Pushed> {
    const body = `{"book":${JSON.stringify(book)},"log":${JSON.stringify(log)},"ops":[${ops.join(",")}]}`;
    return this.#json("api/ops", posting(body), carrying(body.length), isPushed);
  }

  pull(book: string, log: string, since: number, limit: number): Promise<Pulled> {
    const query = new URLSearchParams({ book, log, since: String(since), limit: String(limit) });
    return this.#answer(`api/ops?${query.toString()}`, {}, patience, (body) => {
      const text = new TextDecoder().decode(body);
      return { ...parsed(text, isPage), texts: elementsOf(text, "ops") };
    });
  }

  // wanted lists what the server lost: only servers that name it in "can" know this call, and the next two.
  wanted(): Promise<Wanted> {
    return this.#json("api/wanted", {}, patience, isWanted);
  }

  partOf(sha256: string): Promise<Part> {
    return this.#json(`api/blobs/${sha256}/part`, {}, patience, isPart);
  }

  addPart(sha256: string, type: string, from: number, size: number, body: ArrayBuffer): Promise<Part> {
    const init = { method: "PATCH", headers: { "Content-Type": type }, body };
    return this.#json(`api/blobs/${sha256}/part?from=${from}&size=${size}`, init, carrying(body.byteLength), isPart);
  }

  async missingBlobs(sha256: readonly string[]): Promise<readonly string[]> {
    return (await this.#json("api/blobs/missing", posting(JSON.stringify({ sha256 })), patience, isMissing)).missing;
  }

  putBlob(sha256: string, type: string, body: ArrayBuffer): Promise<void> {
    return this.#answer(`api/blobs/${sha256}`, { method: "PUT", headers: { "Content-Type": type }, body }, carrying(body.byteLength), () => undefined);
  }

  getBlob(sha256: string): Promise<Blob> {
    return this.#answer(`api/blobs/${sha256}`, {}, patience, (body, type) => new Blob([body], { type }));
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

  // heldErasures is known to servers that name "erasures" in "can".
  async heldErasures(): Promise<readonly HeldErasures[]> {
    return (await this.#json("api/erasures", {}, patience, isHeld)).held;
  }

  // visits is known to servers that name "access" in "can"; those of before have none to tell.
  async visits(): Promise<readonly Visit[]> {
    return (await this.#json("api/access", {}, patience, isVisits)).visits;
  }

  renameDevice(id: string, label: string): Promise<void> {
    return this.#answer(`api/devices/${id}`, { ...posting(JSON.stringify({ label })), method: "PATCH" }, patience, () => undefined);
  }

  shutOutDevice(id: string): Promise<void> {
    return this.#answer(`api/devices/${id}/revoke`, posting("{}"), patience, () => undefined);
  }

  #json<T>(path: string, init: RequestInit, wait: Patience, fits: (answer: unknown) => answer is T): Promise<T> {
    return this.#answer(path, init, wait, (body) => parsed(new TextDecoder().decode(body), fits));
  }

  async #answer<T>(path: string, init: RequestInit, wait: Patience, read: (body: Uint8Array<ArrayBuffer>, type: string) => T): Promise<T> {
    try {
      const ask = (signal: AbortSignal): Promise<Response> => this.#means.fetch(`${this.#means.base ?? ""}${path}`, { ...init, cache: "no-store", signal });
      const { response, body } = await inTime(ask, wait);
      if (response.ok && !response.redirected) return read(body, response.headers.get("Content-Type") ?? "");
      throw refusal(response.status, body);
    } catch (error) {
      if (error instanceof ServerRefusal && error.code === "shut_out") await this.#means.shutOut?.();
      throw error instanceof ServerRefusal || error instanceof ServerTrouble ? error : new ServerTrouble(error);
    }
  }
}

// carrying is the patience for a request with a body: nothing tells how much of it has gone, so it has the time that it
// needs at the slowest pace that is still one.
function carrying(bytes: number): Patience {
  return patience + bytes; // ms; a byte each, which is 1 kB a second
}

function posting(body: string): RequestInit {
  return { method: "POST", headers: { "Content-Type": "application/json" }, body };
}

// refusal reads an error. One that is not in the server's own form came from something in between.
function refusal(status: number, body: Uint8Array): Error {
  const { code, field, message } = said(body);
  if (typeof code === "string") return new ServerRefusal(status, { code, field: text(field), message: text(message) });
  return status === 401 || status === 403 ? new ServerRefusal(status, { code: "", field: "", message: "" }) : new ServerTrouble(`status ${status}`, status);
}

function said(body: Uint8Array): Record<string, unknown> {
  try {
    return ((JSON.parse(new TextDecoder().decode(body)) as { error?: unknown } | null)?.error ?? {}) as Record<string, unknown>;
  } catch {
    return {};
  }
}

const text = (value: unknown): string => (typeof value === "string" ? value : "");

function parsed<T>(text: string, fits: (answer: unknown) => answer is T): T {
  const answer: unknown = JSON.parse(text);
  if (!fits(answer)) throw new Error("an answer of another form");
  return answer;
}
