// A server in memory that keeps the contract of the real one, and can be made to fail in every way that a network can.

import { toggled, emptyDigest } from "../op/digest.ts";
import { canonical, type Json } from "../op/json.ts";
import { blobsIn, erasedRow, opOf } from "../op/erase.ts";
import { newRec } from "../op/clock.ts";
import { erases, isRejection, readOp, type StoredOp } from "../op/op.ts";
import { rowOf } from "../db/receive.ts";
import { hex, sha256 } from "../op/sha256.ts";

export interface Failures {
  down: boolean; // no connection
  loseAnswer: number; // the so-manieth request from now is done, but its answer never comes; 0: none
  status: number; // every request is answered with this status, 0: none
  push: { status: number; code: string } | undefined; // so every push is refused; status 413 without a code: by a proxy
  mostBytes: number; // of a push
  now: () => number;
}

export class FakeServer {
  book = "";
  log = newRec();
  readonly server = newRec();
  readonly failures: Failures = { down: false, loseAnswer: 0, status: 0, push: undefined, mostBytes: 8 << 20, now: () => Date.now() };
  readonly asked: string[] = []; // method and path of every request
  ops: StoredOp[] = []; // in order of arrival
  blobs = new Map<string, ArrayBuffer>();
  dropped = new Set<string>();
  version = "test";
  can: string[] = []; // what it knows beyond the first server
  lost = new Set<string>(); // ops and photos that its disk lost
  parts = new Map<string, number[]>();
  flip = false; // its pages are damaged

  #digest = emptyDigest;
  #summed: readonly string[] = [];

  // wipe plays a new data folder.
  wipe(): void {
    Object.assign(this, { book: "", log: newRec(), ops: [], blobs: new Map(), dropped: new Set() });
  }

  // copy and restore play a data folder that is copied and put back by hand: the log keeps its name.
  copy(): () => void {
    const { book, log, ops } = this;
    const kept = { book, log, ops: [...ops] };
    return () => Object.assign(this, { ...kept, ops: [...kept.ops] });
  }

  readonly fetch = async (path: string, init: RequestInit): Promise<Response> => {
    this.asked.push(`${init.method ?? "GET"} ${path.split("?")[0] ?? ""}`);
    await Promise.resolve();
    if (this.failures.down) throw new TypeError("Failed to fetch");
    if (this.failures.status !== 0) return refused(this.failures.status, "paused");
    const answer = this.#answer(path, init);
    if (this.failures.loseAnswer > 0 && --this.failures.loseAnswer === 0) throw new TypeError("network changed");
    return answer;
  };

  text(): string {
    return this.ops.map((row) => row.bytes).join("\n");
  }

  #answer(path: string, init: RequestInit): Response {
    const url = new URL(path, "http://server/");
    switch (`${init.method ?? "GET"} ${url.pathname.replace(/[0-9a-f]{64}/, "*")}`) {
      case "GET /api/book": return json({ book: this.book, log: this.log, server: this.server, name: "car", version: this.version, can: this.can, ...this.#sums() });
      case "POST /api/ops": return this.#push(init.body as string);
      case "GET /api/ops": return this.#pull(url.searchParams);
      case "GET /api/wanted": return json({ ops: [...this.lost], photos: [] });
      case "GET /api/blobs/*/part": return json(this.#held(url.pathname.slice(11, 75)));
      case "PATCH /api/blobs/*/part": return this.#addPart(url.pathname.slice(11, 75), url.searchParams, init.body as ArrayBuffer);
      case "POST /api/blobs/missing": {
        const asked = (JSON.parse(init.body as string) as { sha256: string[] }).sha256;
        return json({ missing: asked.filter((name) => !this.blobs.has(name)) });
      }
      case "PUT /api/blobs/*": return this.#put(url.pathname.slice(-64), init.body as ArrayBuffer);
      case "GET /api/blobs/*": {
        const bytes = this.blobs.get(url.pathname.slice(-64));
        return bytes === undefined ? refused(404, "blob_not_found") : new Response(bytes, { headers: { "Content-Type": "image/jpeg" } });
      }
      default: return refused(404, "not_found");
    }
  }

  #sums(): { count: number; digest: string; now: number } {
    const ids = this.ops.map((row) => row.id);
    const isLonger = this.#summed.every((id, i) => ids[i] === id);
    this.#digest = isLonger ? toggled(this.#digest, ids.slice(this.#summed.length)) : toggled(emptyDigest, ids);
    this.#summed = ids;
    return { count: ids.length, digest: this.#digest, now: this.failures.now() };
  }

  #push(body: string): Response {
    const { push } = this.failures;
    if (push !== undefined) return push.code === "" ? new Response("too large", { status: push.status }) : refused(push.status, push.code);
    if (body.length > this.failures.mostBytes) return refused(413, "body_too_large");
    const { book, ops } = JSON.parse(body) as { book: string; ops: Json[] };
    if (this.book !== "" && this.book !== book) return refused(409, "other_book", "book");
    if (ops.length > 500) return refused(422, "too_many_ops", "ops");
    this.book = book;
    const [stored, known, rejected]: [string[], string[], object[]] = [[], [], []];
    // The texts are sent one after the other; each ends where its JSON does.
    for (const bytes of split(body.slice(body.indexOf('"ops":[') + 7, -2))) {
      const op = readOp(bytes);
      if (isRejection(op)) rejected.push({ id: op.id, code: op.code, message: "no" });
      else if (op.kind === "poison") rejected.push({ id: op.id, code: "op_malformed", message: "poisoned" });
      else {
        const held = this.ops.find((row) => row.id === op.id);
        if (held === undefined) {
          this.ops.push(rowOf(op, bytes));
          stored.push(op.id);
          this.lost.delete(op.id);
        } else if (opOf(held).erased === true || op.erased === true || canonical(JSON.parse(held.bytes) as Json) === canonical(JSON.parse(bytes) as Json)) {
          known.push(op.id);
          if (op.erased === true) this.ops[this.ops.indexOf(held)] = erasedRow(held);
        } else rejected.push({ id: op.id, code: "other_content", message: "no" });
      }
    }
    this.#erase();
    return json({ book: this.book, log: this.log, stored, known, rejected, now: this.failures.now() });
  }

  #erase(): void {
    const gone = new Set(this.ops.filter((row) => erases(opOf(row))).map((row) => row.rec));
    this.ops = this.ops.map((row) => {
      if (!gone.has(row.rec)) return row;
      for (const blob of blobsIn(opOf(row).set)) if (this.blobs.delete(blob) || true) this.dropped.add(blob);
      return erasedRow(row);
    });
  }

  #pull(query: URLSearchParams): Response {
    const book = query.get("book") ?? "";
    if (book !== "" && this.book !== "" && book !== this.book) return refused(409, "other_book", "book");
    const isOurs = (query.get("log") ?? "") === "" || query.get("log") === this.log;
    const since = isOurs ? Math.min(Number(query.get("since")), this.ops.length) : 0;
    const page = isOurs ? this.ops.slice(since, since + Number(query.get("limit"))) : [];
    const next = since + page.length;
    const rest = { via: page.map((row) => ({ id: row.id, device: "carrier", received_at: 1 })), next, more: isOurs && next < this.ops.length, ...this.#sums() };
    const hash = this.can.includes("page_hash") ? { hash: hashOf(page.map((row) => row.bytes)) } : {};
    const ops = page.map((row) => (this.flip ? row.bytes.replace("Ochre", "Ochrf") : row.bytes)).join(",");
    return new Response(`{"book":"${this.book}","log":"${this.log}","ops":[${ops}],${JSON.stringify({ ...rest, ...hash }).slice(1)}`);
  }

  // lose takes an op out of the log, as a server does that finds it damaged.
  lose(id: string): void {
    this.ops = this.ops.filter((row) => row.id !== id);
    this.lost.add(id);
  }

  #held(name: string): object {
    return { have: this.blobs.get(name)?.byteLength ?? this.parts.get(name)?.length ?? 0, whole: this.blobs.has(name) };
  }

  #addPart(name: string, query: URLSearchParams, bytes: ArrayBuffer): Response {
    const held = this.parts.get(name) ?? [];
    if (Number(query.get("from")) === held.length) held.push(...new Uint8Array(bytes));
    this.parts.set(name, held);
    if (held.length < Number(query.get("size"))) return json(this.#held(name));
    this.parts.delete(name);
    const put = this.#put(name, Uint8Array.from(held).buffer);
    return put.ok ? json(this.#held(name)) : put;
  }

  #put(name: string, bytes: ArrayBuffer): Response {
    if (this.dropped.has(name)) return refused(410, "erased");
    if (hex(sha256(new Uint8Array(bytes))) !== name) return refused(422, "blob_wrong_hash");
    if (new Uint8Array(bytes)[0] === 0) return refused(415, "blob_wrong_type");
    this.blobs.set(name, bytes);
    return new Response(null, { status: 204 });
  }
}

// split takes a list of JSON objects apart by trying: the first comma after which the text so far is JSON ends one.
function split(list: string): string[] {
  const found: string[] = [];
  for (let from = 0, at = 0; from < list.length; ) {
    const comma = list.indexOf("},{", at);
    const end = comma < 0 ? list.length : comma + 1;
    const piece = list.slice(from, end);
    at = end;
    if (comma >= 0 && !isJson(piece)) continue;
    found.push(piece);
    from = at = end + 1;
  }
  return found;
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

function json(body: object): Response {
  return new Response(JSON.stringify(body));
}

function refused(status: number, code: string, field = ""): Response {
  return new Response(JSON.stringify({ error: { code, field, message: "no" } }), { status });
}

// hashOf is the hash that a page carries: the SHA-256 of the SHA-256 of each op's bytes in a row.
function hashOf(texts: readonly string[]): string {
  const utf8 = new TextEncoder();
  const hashes = new DataView(new ArrayBuffer(32 * texts.length));
  texts.forEach((text, i) => sha256(utf8.encode(text)).forEach((word, j) => hashes.setUint32(32 * i + 4 * j, word)));
  return hex(sha256(new Uint8Array(hashes.buffer)));
}
