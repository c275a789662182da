import { el, setAttr, setText, svg } from "./el.ts";
import { equal, test } from "./testing.ts";

test("el: attributes, children and what is left out", () => {
  const node = el("p", { class: "a b", id: "x", hidden: true, title: undefined, "aria-busy": false }, "one ", null, false, el("b", {}, "two"));
  equal(node.outerHTML, '<p class="a b" id="x" hidden="" aria-busy="false">one <b>two</b></p>');
});

test("el: text is never markup", () => {
  equal(el("p", {}, "<img src=x onerror=alert(1)>").children.length, 0);
});

test("el: listeners and data", () => {
  let pressed = 0;
  const node = el("button", { data: { place: "roof" }, on: { click: () => pressed++ } });
  node.click();
  equal([pressed, node.dataset["place"]], [1, "roof"]);
});

test("el: the value of a list is set after its lines", () => {
  const list = el("select", { value: "b" }, el("option", { value: "a" }), el("option", { value: "b" }));
  equal(list.value, "b");
});

test("el: a checked box is checked, also after a person changed it", () => {
  const box = el("input", { type: "checkbox", checked: true });
  equal([box.checked, box.hasAttribute("checked")], [true, false]);
});

test("el: drawings are in the drawing's namespace", () => {
  const path = svg("path", { d: "M0 0", fill: undefined });
  equal([path instanceof SVGPathElement, path.getAttribute("d"), path.hasAttribute("fill")], [true, "M0 0", false]);
});

test("el: writes only what changes", async () => {
  const node = el("p", { title: "t" }, "same");
  const seen: MutationRecord[] = [];
  const observer = new MutationObserver((records) => void seen.push(...records));
  observer.observe(node, { attributes: true, childList: true, characterData: true, subtree: true });
  setText(node, "same");
  setAttr(node, "title", "t");
  setAttr(node, "lang", null);
  await Promise.resolve();
  equal(seen.length, 0, "unchanged");
  setText(node, "other");
  setAttr(node, "title", false);
  await Promise.resolve();
  equal(seen.length, 2, "changed");
});
