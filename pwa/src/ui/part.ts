// A part of the page: a custom element in the light DOM that is built once, shown often, and acts by event.

// Act names an event and says what it carries, so that sender and listener agree.
export type Act<D> = string & { readonly detail?: D };

// actName gives an act its name: const picked = actName<Units>("rs-picked").
export function actName<D>(name: string): Act<D> {
  return name as Act<D>;
}

export abstract class Part<V = void> extends HTMLElement {
  #view: V | undefined;
  #built = false;

  // view is what the part shows; setting it redraws (and builds, so a part can be filled before it is put in the page).
  get view(): V | undefined {
    return this.#view;
  }

  set view(view: V | undefined) {
    this.#view = view;
    this.#ready();
    if (view !== undefined) this.show(view);
  }

  connectedCallback(): void {
    this.#ready();
  }

  // act tells whoever listens above that a person did something.
  act<D>(name: Act<D>, detail: D): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  #ready(): void {
    if (this.#built) return;
    this.#built = true;
    this.build();
  }

  // build makes the children, once: when first connected or at the first view.
  protected abstract build(): void;

  // show writes a view into what was built. It is cheap and may run often.
  protected show(_view: V): void {}
}

// define gives a part its element name. Doing so twice is harmless.
export function define(name: `rs-${string}`, part: CustomElementConstructor): void {
  if (customElements.get(name) === undefined) customElements.define(name, part);
}

// listen hears an act; the returned function (or the signal) ends it.
export function listen<D>(
  target: EventTarget, name: Act<D>, hear: (detail: D, event: CustomEvent<D>) => void, signal?: AbortSignal,
): () => void {
  const listener = (event: Event): void => {
    if (event instanceof CustomEvent) hear((event as CustomEvent<D>).detail, event as CustomEvent<D>);
  };
  target.addEventListener(name, listener, signal === undefined ? {} : { signal });
  return () => target.removeEventListener(name, listener);
}

export { setAttr, setHidden, setText } from "./el.ts";
