// How much one request carries. A small piece that arrives is worth more than a large one that does not: it begins small,
// grows while the network is quick, and shrinks after a timeout, or when something in between calls it too large.

export interface Limits {
  readonly first: number;
  readonly least: number;
  readonly most: number;
}

const quick = 2_000; // ms
const slow = 12_000; // ms: half of it would be quick enough to tell a person how far it is

export class Pace {
  readonly #limits: Limits;
  #now: number;

  constructor(limits: Limits) {
    this.#limits = limits;
    this.#now = limits.first;
  }

  // size is how much the next request may carry.
  get size(): number {
    return this.#now;
  }

  // took tells how long a request of a size took; a small one says nothing about larger ones.
  took(ms: number, size = this.#now): void {
    if (ms < quick && size * 2 > this.#now) this.#set(this.#now * 2);
    else if (ms > slow) this.#set(this.#now / 2);
  }

  // failed tells that a request of a size did not arrive.
  failed(size = this.#now): void {
    this.#set(Math.min(this.#now, size) / 2);
  }

  #set(size: number): void {
    this.#now = Math.max(this.#limits.least, Math.min(this.#limits.most, Math.floor(size)));
  }
}

// Paces are those of one server: how much of the ops goes, how many come, how much of a photo goes.
export interface Paces {
  readonly push: Pace; // bytes
  readonly pull: Pace; // ops
  readonly photo: Pace; // bytes
}

export function paces(): Paces {
  return {
    push: new Pace({ first: 32 << 10, least: 1 << 10, most: 4 << 20 }),
    pull: new Pace({ first: 500, least: 20, most: 500 }),
    photo: new Pace({ first: 32 << 10, least: 8 << 10, most: 1 << 20 }),
  };
}
