// Cares and remarks that do not stop a wheel.

import type { NoticeView } from "../../../book/pressure/notices.ts";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { define, Part, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export class NoticeList extends Part<readonly NoticeView[]> {
  protected override build(): void {
    this.classList.add("stack");
  }

  protected override show(view: readonly NoticeView[]): void {
    const order = { stop: 0, care: 1, info: 2 };
    const sorted = [...view].sort((a, b) => order[a.severity] - order[b.severity]);
    keyed(this, sorted, (each) => each.key, () => el("p", {}, el("strong"), " ", el("span")), (node, each) => {
      node.className = each.severity === "info" ? "quiet small remark" : `notice ${each.severity}`;
      const [word, text] = [...node.children];
      if (word instanceof HTMLElement) {
        setText(word, each.severity === "care" ? w("notice.care") : "");
        setHidden(word, each.severity !== "care");
      }
      if (text !== undefined) setText(text, each.wheel === "both" ? each.text : `${w(`side.${each.wheel}`)}: ${each.text}`);
    });
    setHidden(this, view.length === 0);
  }
}

define("rs-notice-list", NoticeList);
