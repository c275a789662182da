// A line that is typed into, with its label, and below it what is wrong with it.

import { el, type Props } from "../../ui/el.ts";
import { setAttr, setText } from "../../ui/part.ts";

export interface Entry {
  readonly node: HTMLElement;
  readonly input: HTMLInputElement;
  readonly fault: (words: string) => void;
}

let made = 0;

export function entry(label: string, props: Props): Entry {
  const id = `phones-${++made}`;
  const input = el("input", { class: "entry", id, type: "text", autocomplete: "off", spellcheck: "false", enterkeyhint: "done", "aria-describedby": `${id}-fault`, ...props });
  const below = el("p", { class: "fault", id: `${id}-fault` });
  const fault = (words: string): void => {
    setText(below, words);
    setAttr(input, "aria-invalid", words === "" ? null : "true");
  };
  return { node: el("div", {}, el("label", { for: id }, label), input, below), input, fault };
}
