// Keeps a list of elements in step with a list of items. Elements stay with their key; as few as possible move, and
// the one that holds the focus never does (moving it would take the keyboard away from a person who is typing).

const lists = new WeakMap<Element, Map<string, HTMLElement>>();

// keyed makes, updates, moves and removes the children of parent so that they stand in the order of items.
// Parent holds nothing but this list. Keys must differ.
export function keyed<T, E extends HTMLElement>(
  parent: Element, items: readonly T[], key: (item: T) => string,
  make: (item: T) => E, update: (node: E, item: T, index: number) => void,
): void {
  const before = lists.get(parent) ?? new Map<string, HTMLElement>();
  const after = new Map<string, HTMLElement>();
  items.forEach((item, index) => {
    const name = key(item);
    if (after.has(name)) throw new Error(`keyed list: two items have the key ${name}`);
    const node = (before.get(name) as E | undefined) ?? make(item);
    after.set(name, node);
    update(node, item, index);
  });
  for (const [name, node] of before) {
    if (!after.has(name)) node.remove();
  }
  lists.set(parent, after);
  place(parent, [...after.values()]);
}

function place(parent: Element, wanted: readonly HTMLElement[]): void {
  const position = new Map<Element, number>();
  [...parent.children].forEach((node, index) => position.set(node, index));
  const old = wanted.map((node) => position.get(node) ?? -1);
  const focused = wanted.findIndex((node) => node.contains(document.activeElement));
  const still = stay(old, focused);
  let next: Element | null = null;
  for (let i = wanted.length - 1; i >= 0; i--) {
    const node = wanted[i];
    if (node === undefined) continue;
    if (!still.has(i)) parent.insertBefore(node, next);
    next = node;
  }
}

// stay picks the indexes that need not move: a longest rising run of old positions (-1 is new). Everything that would
// force the focused one to move is left out first, so a longest run always holds it.
export function stay(old: readonly number[], focused: number): Set<number> {
  const fixed = focused < 0 ? -1 : old[focused] ?? -1;
  const fits = (position: number, index: number): boolean =>
    position >= 0 && (fixed < 0 || index === focused || (index < focused ? position < fixed : position > fixed));
  const ends: number[] = []; // ends[n]: the index that ends the best rising run of length n + 1
  const previous = new Map<number, number | undefined>();
  const at = (index: number | undefined): number => (index === undefined ? -1 : old[index] ?? -1);
  old.forEach((position, index) => {
    if (!fits(position, index)) return;
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (at(ends[middle]) < position) low = middle + 1;
      else high = middle;
    }
    previous.set(index, low > 0 ? ends[low - 1] : undefined);
    ends[low] = index;
  });
  const kept = new Set<number>();
  for (let i = ends.at(-1); i !== undefined; i = previous.get(i)) kept.add(i);
  return kept;
}
