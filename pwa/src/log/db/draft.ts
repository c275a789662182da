// Drafts: what a person has typed, kept at once. Every value goes to the database as soon as it is given, in a transaction
// of its own that is committed at once: none waits in the page for an older one to end, so a page that goes loses none.

import { answered, type Database, type StorageTrouble, troubleFrom } from "./idb.ts";
import type { NamedRow } from "./tables.ts";
import { forgetUnsaved, keepUnsaved, recoverUnsaved, type Typed } from "./unsaved.ts";
import { read, write } from "./write.ts";

export type SaveState =
  | { readonly kind: "saved" }
  | { readonly kind: "saving" }
  | { readonly kind: "failed"; readonly trouble: StorageTrouble };

interface Follower {
  readonly name: string;
  readonly hear: (value: unknown) => void;
  readonly editing: () => boolean;
}

const recheck = 400; // ms between looks whether a person has stopped editing

export class DraftBox {
  readonly #db: Promise<Database>;
  readonly #tell: (state: SaveState) => void;
  readonly #unsaved = new Map<string, Typed>();
  readonly #followers = new Set<Follower>();
  readonly #held = new Map<Follower, ReturnType<typeof setTimeout>>();
  readonly #recovered: Promise<void>;
  #name = ""; // of the database, once it is known
  #newest = 0; // the time of the last value
  #writing = 0; // transactions that have not ended
  readonly #refused = new Set<string>(); // names whose last write failed
  #laidAside = false;
  #channel: BroadcastChannel | undefined;

  constructor(db: Promise<Database>, tell: (state: SaveState) => void) {
    this.#db = db;
    this.#tell = tell;
    this.#recovered = db.then((open) => this.#begin(open)).catch(() => undefined); // a refusal shows at the first load or save
  }

  // save keeps a value. It resolves true when that value, or a later one, is on the disk, and false when the phone
  // refused (which tell has said); the value then stays here and is tried again with the next save or flush.
  save(name: string, value: unknown): Promise<boolean> {
    this.#newest = Math.max(Date.now(), this.#newest + 1);
    this.#unsaved.set(name, { value, at: this.#newest });
    for (const [follower, timer] of this.#held) {
      if (follower.name === name) this.#letGo(follower, timer); // what is typed here now is newer
    }
    return this.#write([...new Set([name, ...this.#refused])]);
  }

  // flush writes what is not on the disk yet.
  flush(): Promise<boolean> {
    return this.#unsaved.size === 0 ? Promise.resolve(true) : this.#write([...this.#unsaved.keys()]);
  }

  // leave is for a page that may be taken away in this very moment: what is not known to be on the disk is laid aside too.
  leave(): void {
    if (this.#unsaved.size === 0) return;
    void this.flush();
    keepUnsaved(this.#name, this.#unsaved);
    this.#laidAside = true;
  }

  // load gives the value last saved, undefined when there is none or the phone refuses (which tell has said).
  async load(name: string): Promise<unknown> {
    const typed = this.#unsaved.get(name);
    if (typed !== undefined) return typed.value;
    await this.#recovered;
    try {
      const row: unknown = await read(await this.#db, ["drafts"], (tx) => answered(tx.objectStore("drafts").get(name)));
      const { value, at } = (row ?? {}) as Partial<NamedRow>;
      this.#newest = Math.max(this.#newest, at ?? 0);
      return this.#unsaved.has(name) ? this.#unsaved.get(name)?.value : value;
    } catch (error) {
      this.#tell({ kind: "failed", trouble: troubleFrom(error) });
      return undefined;
    }
  }

  // follow hears of values that other tabs saved. While editing says so the change waits, and it is dropped when this
  // tab saves the same draft first.
  follow(name: string, hear: (value: unknown) => void, editing: () => boolean = () => false): () => void {
    const follower = { name, hear, editing };
    this.#followers.add(follower);
    return () => {
      this.#followers.delete(follower);
      this.#letGo(follower, this.#held.get(follower));
    };
  }

  // write puts the newest values of some names on the disk, also when it has to run twice.
  async #write(names: readonly string[]): Promise<boolean> {
    for (const name of names) this.#refused.delete(name);
    if (this.#writing++ === 0) this.#tell({ kind: "saving" });
    let written = new Map<string, Typed>();
    let trouble: StorageTrouble | undefined;
    try {
      await write(await this.#db, ["drafts"], (tx) => {
        written = new Map(names.flatMap((name) => [...pair(name, this.#unsaved.get(name))]));
        for (const [name, typed] of written) tx.objectStore("drafts").put({ name, ...typed });
      });
    } catch (error) {
      trouble = troubleFrom(error);
    }
    this.#writing--;
    if (trouble === undefined) this.#settle(written);
    else this.#keepForNext(names, trouble);
    if (trouble === undefined && this.#writing === 0 && this.#unsaved.size === 0) this.#tell({ kind: "saved" });
    return trouble === undefined;
  }

  #keepForNext(names: readonly string[], trouble: StorageTrouble): void {
    for (const name of names) if (this.#unsaved.has(name)) this.#refused.add(name);
    this.#tell({ kind: "failed", trouble });
  }

  #settle(written: ReadonlyMap<string, Typed>): void {
    for (const [name, typed] of written) {
      if (this.#unsaved.get(name) === typed) this.#unsaved.delete(name);
      this.#channel?.postMessage(name);
    }
    if (this.#unsaved.size > 0 || !this.#laidAside) return;
    forgetUnsaved(this.#name); // the page was not taken away after all
    this.#laidAside = false;
  }

  async #begin(open: Database): Promise<void> {
    this.#name = open.name;
    this.#join(open.name);
    this.#newest = Math.max(this.#newest, await recoverUnsaved(open));
  }

  #join(name: string): void {
    if (typeof BroadcastChannel === "undefined") return;
    this.#channel = new BroadcastChannel(name);
    this.#channel.onmessage = (event: MessageEvent<unknown>) => {
      for (const follower of this.#followers) {
        if (follower.name === event.data) void this.#pass(follower);
      }
    };
  }

  async #pass(follower: Follower): Promise<void> {
    this.#letGo(follower, this.#held.get(follower));
    if (follower.editing()) {
      this.#held.set(follower, setTimeout(() => void this.#pass(follower), recheck));
      return;
    }
    const value = await this.load(follower.name);
    if (this.#followers.has(follower)) follower.hear(value);
  }

  #letGo(follower: Follower, timer: ReturnType<typeof setTimeout> | undefined): void {
    clearTimeout(timer);
    this.#held.delete(follower);
  }
}

function pair<T>(name: string, value: T | undefined): readonly (readonly [string, T])[] {
  return value === undefined ? [] : [[name, value]];
}
