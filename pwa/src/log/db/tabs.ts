// The other tabs of this browser that have the same book open.

export class Tabs {
  #channel: BroadcastChannel | undefined;
  readonly #heard = new Set<(message: unknown) => void>();

  // join begins to listen; before, and where the browser has no channel, this tab is alone.
  join(name: string): void {
    if (this.#channel !== undefined || typeof BroadcastChannel === "undefined") return;
    this.#channel = new BroadcastChannel(name);
    this.#channel.onmessage = (event: MessageEvent<unknown>) => {
      for (const hear of this.#heard) hear(event.data);
    };
  }

  tell(message: object): void {
    this.#channel?.postMessage(message);
  }

  on(hear: (message: unknown) => void): () => void {
    this.#heard.add(hear);
    return () => this.#heard.delete(hear);
  }
}
