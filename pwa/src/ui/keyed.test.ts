import { el } from "./el.ts";
import { keyed, stay } from "./keyed.ts";
import { equal, test } from "./testing.ts";

function list(parent: HTMLElement, names: string): void {
  keyed(parent, [...names], (name) => name, (name) => el("input", { id: name }), (node, _, index) => (node.tabIndex = index));
}

const shown = (parent: HTMLElement): string => [...parent.children].map((node) => node.id).join("");

// moves counts the elements that a change puts somewhere.
async function moves(parent: HTMLElement, names: string): Promise<number> {
  let added = 0;
  const observer = new MutationObserver((records) => records.forEach((record) => (added += record.addedNodes.length)));
  observer.observe(parent, { childList: true });
  list(parent, names);
  await Promise.resolve();
  observer.disconnect();
  return added;
}

test("keyed: every order of every change ends right, with the same elements", () => {
  const orders = ["", "a", "abc", "cba", "bca", "abcdef", "fedcba", "adbecf", "xaybzc", "ace", "def"];
  for (const from of orders) {
    for (const to of orders) {
      const parent = el("div");
      list(parent, from);
      const before = new Map([...parent.children].map((node) => [node.id, node]));
      list(parent, to);
      equal(shown(parent), to, `${from} to ${to}`);
      for (const node of parent.children) equal((before.get(node.id) ?? node) === node, true, `${from} to ${to}: ${node.id} is new`);
    }
  }
});

test("keyed: as few elements move as can be", async () => {
  const parent = el("div");
  list(parent, "abcdef");
  equal(await moves(parent, "abcdef"), 0, "nothing changed");
  equal(await moves(parent, "fabcde"), 1, "the last comes first");
  equal(await moves(parent, "abcde"), 0, "the first goes away");
  equal(await moves(parent, "abxcde"), 1, "one comes in");
});

test("keyed: the focused element never moves", async () => {
  for (const [from, to] of [["abcdef", "fabcde"], ["abc", "cba"], ["abcdef", "bcdefa"], ["abcd", "dxcyb"]] as const) {
    for (const name of to) {
      const parent = el("div");
      document.body.append(parent);
      list(parent, from);
      const node = parent.querySelector<HTMLElement>(`#${name}`);
      if (node === null) continue;
      node.focus();
      let left = 0;
      node.addEventListener("blur", () => left++);
      await moves(parent, to);
      equal([shown(parent), document.activeElement === node, left], [to, true, 0], `${from} to ${to}, focus on ${name}`);
      parent.remove();
    }
  }
});

test("keyed: two items with one key are a mistake", () => {
  let refused = false;
  try {
    list(el("div"), "aa");
  } catch {
    refused = true;
  }
  equal(refused, true);
});

test("keyed: the run that stays", () => {
  equal([...stay([2, 0, 1, 3], -1)].sort(), [1, 2, 3]);
  equal([...stay([2, 0, 1, 3], 0)].sort(), [0, 3], "the first has the focus");
  equal([...stay([-1, -1], -1)], [], "all new");
  equal([...stay([1, -1, 0], 1)].length, 1, "a new one cannot have the focus yet");
});
