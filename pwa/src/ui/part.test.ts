import { el } from "./el.ts";
import { actName, define, listen, Part, setText } from "./part.ts";
import { equal, test } from "./testing.ts";

const pressed = actName<number>("rs-test-pressed");

class Sample extends Part<string> {
  built = 0;
  shown: string[] = [];
  readonly #text = el("b");

  protected override build(): void {
    this.built++;
    this.append(this.#text);
  }

  protected override show(view: string): void {
    this.shown.push(view);
    setText(this.#text, view);
  }
}

define("rs-test-sample", Sample);

test("part: built once, at the first view or when connected", () => {
  const early = new Sample();
  equal(early.built, 0, "just made");
  early.view = "one";
  document.body.append(early);
  early.remove();
  document.body.append(early);
  equal([early.built, early.shown], [1, ["one"]]);

  const late = new Sample();
  document.body.append(late);
  equal([late.built, late.shown], [1, []], "without a view there is nothing to show");
  late.view = "two";
  late.view = "three";
  equal([late.built, late.shown, late.textContent], [1, ["two", "three"], "three"]);
});

test("part: acts are heard above, until the signal ends it", () => {
  const outer = el("div", {}, new Sample());
  const heard: number[] = [];
  const ending = new AbortController();
  listen(outer, pressed, (detail) => heard.push(detail), ending.signal);
  const stop = listen(outer, pressed, (detail) => heard.push(-detail));
  const part = outer.firstElementChild as Sample;
  part.act(pressed, 1);
  stop();
  part.act(pressed, 2);
  ending.abort();
  part.act(pressed, 3);
  equal(heard, [1, -1, 2]);
});

test("part: defining twice is harmless", () => {
  define("rs-test-sample", Sample);
});
