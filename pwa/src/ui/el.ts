// The one way this app makes elements: typed, without markup strings, so nothing a person types can become markup.

export type Child = Node | string | null | undefined | false;

type Value = string | number | boolean | null | undefined;

export type Listeners = {
  [E in keyof HTMLElementEventMap]?: (event: HTMLElementEventMap[E]) => void;
};

type Named =
  | "accept" | "autocomplete" | "capture" | "checked" | "content" | "dir" | "download" | "enterkeyhint" | "for" | "href"
  | "id" | "inputmode" | "lang" | "list" | "max" | "maxlength" | "min" | "multiple" | "name" | "open" | "pattern"
  | "placeholder" | "readonly" | "rel" | "required" | "role" | "scope" | "selected" | "spellcheck" | "step" | "tabindex"
  | "target" | "title" | "type" | "value";

export type Props = { [A in Named]?: Value } & { [A in `aria-${string}`]?: Value } & {
  class?: string;
  hidden?: boolean;
  disabled?: boolean;
  data?: Record<string, string>;
  on?: Listeners;
};

// el makes an HTML element with its attributes, listeners and children.
export function el<T extends keyof HTMLElementTagNameMap>(
  tag: T, props: Props = {}, ...children: readonly Child[]
): HTMLElementTagNameMap[T] {
  const node = document.createElement(tag);
  fill(node, children);
  for (const [name, value] of Object.entries(props)) apply(node, name, value);
  return node;
}

// svg makes an element of a drawing.
export function svg<T extends keyof SVGElementTagNameMap>(
  tag: T, attrs: Record<string, string | number | undefined> = {}, ...children: readonly Child[]
): SVGElementTagNameMap[T] {
  const node = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(attrs)) {
    if (value !== undefined) node.setAttribute(name, String(value));
  }
  fill(node, children);
  return node;
}

function fill(node: Element, children: readonly Child[]): void {
  for (const child of children) {
    if (child !== null && child !== undefined && child !== false) node.append(child);
  }
}

function apply(node: HTMLElement, name: string, value: Props[keyof Props]): void {
  if (name === "on") {
    for (const [type, listener] of Object.entries(value as Listeners)) {
      node.addEventListener(type, listener as EventListener);
    }
  } else if (name === "data") {
    Object.assign(node.dataset, value);
  } else if ((name === "value" || name === "checked") && value !== undefined && name in node) {
    // The property, not the attribute, is what a person sees once they have typed. Set last: a select needs its options.
    Object.assign(node, { [name]: value });
  } else {
    setAttr(node, name, value as Value);
  }
}

// setAttr writes an attribute only when it changes. false, null and undefined take it away, save for aria-*,
// where "false" is a value of its own.
export function setAttr(node: Element, name: string, value: Value): void {
  const aria = name.startsWith("aria-");
  if (value === null || value === undefined || (value === false && !aria)) {
    if (node.hasAttribute(name)) node.removeAttribute(name);
    return;
  }
  const text = value === true && !aria ? "" : String(value);
  if (node.getAttribute(name) !== text) node.setAttribute(name, text);
}

// setText writes a node's text only when it changes, so that selections and screen readers are left in peace.
export function setText(node: Node, text: string): void {
  if (node.textContent !== text) node.textContent = text;
}

// setHidden hides or shows, only when it changes.
export function setHidden(node: HTMLElement, hidden: boolean): void {
  if (node.hidden !== hidden) node.hidden = hidden;
}
