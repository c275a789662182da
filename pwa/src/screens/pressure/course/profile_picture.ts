// The height profile, with what is painted on it as bands below. A finger drawn along it paints.

import type { Painted } from "../../../book/course/paint.ts";
import type { Profile } from "../../../book/course/profile.ts";
import type { GroundKind } from "../../../book/pressure/fields.ts";
import { svg } from "../../../ui/el.ts";
import { define, Part } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

const [wide, tall, band] = [340, 130, 34];

export interface ProfileView {
  readonly profile: Profile;
  readonly painted: readonly Painted[];
  readonly spoken: string;
}

export class ProfilePicture extends Part<ProfileView> {
  dragged: (from: number, to: number) => void = () => undefined; // km
  readonly #mark = svg("rect", { class: "mark", y: 1, height: tall + band - 2 });

  protected override build(): void {
    this.addEventListener("pointerdown", (down) => this.#drag(down));
  }

  #drag(down: PointerEvent): void {
    const whole = this.view?.profile.km ?? 0;
    const picture = this.firstElementChild;
    if (picture === null) return;
    down.preventDefault();
    this.setPointerCapture(down.pointerId);
    const box = picture.getBoundingClientRect();
    const at = (x: number): number => Math.max(0, Math.min(1, (x - box.left) / box.width)) * whole;
    const from = at(down.clientX);
    picture.append(this.#mark);
    const move = ({ clientX }: PointerEvent): void => {
      const to = at(clientX);
      this.#mark.setAttribute("x", String((Math.min(from, to) / whole) * wide));
      this.#mark.setAttribute("width", String((Math.abs(to - from) / whole) * wide));
    };
    const end = (event: PointerEvent): void => {
      this.removeEventListener("pointermove", move);
      this.#mark.remove();
      if (event.type === "pointerup") this.dragged(from, at(event.clientX));
    };
    move(down);
    this.addEventListener("pointermove", move);
    this.addEventListener("pointerup", end, { once: true });
    this.addEventListener("pointercancel", end, { once: true });
  }

  protected override show({ profile, painted, spoken }: ProfileView): void {
    const picture = svg("svg", { viewBox: `0 0 ${wide} ${tall + band}`, role: "img", "aria-label": spoken });
    const { heights } = profile;
    const [low, high] = [profile.lowest?.m ?? 0, profile.highest?.m ?? 0];
    const y = (m: number): string => (tall - 8 - ((m - low) / Math.max(20, high - low)) * (tall - 20)).toFixed(1);
    if (heights.length > 1) {
      const line = heights.map((m, n) => `${((n / (heights.length - 1)) * wide).toFixed(1)} ${y(m)}`).join("L");
      picture.append(svg("path", { d: `M0 ${tall}L${line}L${wide} ${tall}Z`, class: "hill" }));
    }
    for (const { kind, from, to } of painted) {
      const [x, width] = [(from / profile.km) * wide, ((to - from) / profile.km) * wide];
      const name = w(`short.${kind as GroundKind}`);
      picture.append(svg("rect", { x, y: tall, width, height: band - 1, class: "band" }));
      if (width > name.length * 7 + 4) picture.append(svg("text", { x: x + width / 2, y: tall + 22, "text-anchor": "middle" }, name));
    }
    this.replaceChildren(picture);
  }
}

define("rs-profile-picture", ProfilePicture);
