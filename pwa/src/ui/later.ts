// A script that comes when it is first wanted, with the words that it speaks. After the start all come by themselves, so that
// nothing has to wait, or fail without a signal, when it is tapped.

import { learn } from "../words/locale.ts";

export class Later<T> {
  readonly #fetch: () => Promise<T>;
  #script: T | undefined;

  constructor(fetch: () => Promise<T>) {
    this.#fetch = fetch;
  }

  // here is the script, once it was loaded.
  get here(): T | undefined {
    return this.#script;
  }

  // load rejects when the script or its words are not to be had, and may be tried again.
  async load(): Promise<T> {
    const [script] = await Promise.all([this.#fetch(), learn("later")]);
    this.#script = script;
    return script;
  }
}
