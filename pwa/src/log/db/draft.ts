// Drafts: what a person has typed, kept at once. A value goes to disk as soon as it is given; while one write runs, only
// the newest value of each name waits for the next, so a burst of typing costs few writes and loses nothing.

import { answered, type Database, type StorageTrouble, troubleFrom } from "./idb.ts";
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
  readonly #unsaved = new Map<string, unknown>();
  readonly #followers = new Set<Follower>();
  readonly #held = new Map<Follower, ReturnType<typeof setTimeout>>();
  #writing: Promise<boolean> | undefined;
  #channel: BroadcastChannel | undefined;

  constructor(db: Promise<Database>, tell: (state: SaveState) => void) {
    this.#db = db;
    this.#tell = tell;
    db.then((open) => this.#join(open.name), () => undefined); // a refusal shows at the first load or save
  }

  // save keeps a value. It resolves true when that value, or a later one, is on the disk, and false when the phone
  // refused (which tell has said); the value then stays here and is tried again with the next save or flush.
  save(name: string, value: unknown): Promise<boolean> {
    this.#unsaved.set(name, value);
    for (const [follower, timer] of this.#held) {
      if (follower.name === name) this.#letGo(follower, timer); // what is typed here now is newer
    }
    return this.flush();
  }

  // flush writes what is not on the disk yet.
  flush(): Promise<boolean> {
    if (this.#writing === undefined) {
      if (this.#unsaved.size === 0) return Promise.resolve(true);
      this.#tell({ kind: "saving" });
      this.#writing = this.#drain().finally(() => (this.#writing = undefined));
    }
    return this.#writing;
  }

  // load gives the value last saved, undefined when there is none or the phone refuses (which tell has said).
  async load(name: string): Promise<unknown> {
    if (this.#unsaved.has(name)) return this.#unsaved.get(name);
    try {
      const row: unknown = await read(await this.#db, ["drafts"], (tx) => answered(tx.objectStore("drafts").get(name)));
      return this.#unsaved.has(name) ? this.#unsaved.get(name) : valueOf(row);
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

  async #drain(): Promise<boolean> {
    while (this.#unsaved.size > 0) {
      const batch = new Map(this.#unsaved);
      try {
        await write(await this.#db, ["drafts"], (tx) => {
          for (const [name, value] of batch) tx.objectStore("drafts").put({ name, value });
        });
      } catch (error) {
        this.#tell({ kind: "failed", trouble: troubleFrom(error) });
        return false;
      }
      for (const [name, value] of batch) {
        if (this.#unsaved.get(name) === value) this.#unsaved.delete(name);
        this.#channel?.postMessage(name);
      }
    }
    this.#tell({ kind: "saved" });
    return true;
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

function valueOf(row: unknown): unknown {
  return typeof row === "object" && row !== null && "value" in row ? row.value : undefined;
}
