// What a tap brings must not move what lies under the finger, nor be answered by the second half of a double tap.

// steady does some work and puts what was pressed back where it was on the screen.
export async function steady(pressed: EventTarget | null, work: () => Promise<void>): Promise<void> {
  const node = pressed instanceof HTMLElement ? pressed : undefined;
  const top = node?.getBoundingClientRect().top;
  await work();
  if (node === undefined || top === undefined || !node.isConnected) return;
  const moved = node.getBoundingClientRect().top - top;
  if (Math.abs(moved) >= 1) scrollBy({ top: moved, behavior: "instant" });
}

const rest = 400; // ms: longer than a double tap

// Rest keeps a control from being pressed again before a person can have read what it says now.
export class Rest {
  readonly #control: HTMLElement;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(control: HTMLElement) {
    this.#control = control;
  }

  get over(): boolean {
    return this.#timer === undefined;
  }

  begin(): void {
    clearTimeout(this.#timer);
    this.#control.setAttribute("aria-disabled", "true");
    this.#timer = setTimeout(() => {
      this.#timer = undefined;
      this.#control.removeAttribute("aria-disabled");
    }, rest);
  }
}
