// Who may come in. A phone is let in with a code; one that is in makes codes, and says who stays.

import type { Device, NewCode, Visit } from "./answers.ts";
import type { BookLog } from "../book_log.ts";
import { valueOf } from "../op/merge.ts";
import type { ServerApi } from "./server_api.ts";

export type { Device, NewCode, Visit } from "./answers.ts";

export class Pairing {
  readonly #log: BookLog;
  readonly #api: ServerApi;
  readonly #meet: () => void;

  // meet is called when there is something to fetch or to bring.
  constructor(log: BookLog, api: ServerApi, meet: () => void) {
    this.#log = log;
    this.#api = api;
    this.#meet = meet;
  }

  // pair lets this phone in. The code is used up, and kept nowhere.
  async pair(code: string, label: string): Promise<void> {
    await this.#log.ready;
    const device = await this.#api.pair(code, label, this.#log.device);
    try {
      if (device !== "") await this.#log.takeDevice(device);
      await this.#name(label);
    } finally {
      this.#meet(); // it is let in, whatever this phone could keep of it
    }
  }

  devices(): Promise<readonly Device[]> {
    return this.#api.devices();
  }

  visits(): Promise<readonly Visit[]> {
    return this.#api.visits();
  }

  newCode(): Promise<NewCode> {
    return this.#api.newCode();
  }

  async rename(device: string, label: string): Promise<void> {
    await this.#api.renameDevice(device, label);
    this.#meet();
  }

  async shutOut(device: string): Promise<void> {
    await this.#api.shutOutDevice(device);
    this.#meet();
  }

  // name writes the same into this phone's record as the server does, so that the two do not clash. A phone without any
  // entries stays so: it takes the server's book.
  async #name(label: string): Promise<void> {
    const { device } = this.#log;
    if (await this.#log.isEmpty()) return;
    const shown = await this.#log.get(device);
    if (valueOf(shown, "label") === label) return;
    await this.#log.save([{ rec: device, kind: "device", set: { label }, ...(shown !== undefined && { shown }) }]);
  }
}
