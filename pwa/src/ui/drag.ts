// Moves the children of a list by a grip. It is for fingers and mice that like it so; buttons do the same for everybody.

const grip = ".grip";

// dragged hears of a child that was dragged by its grip to another place.
export function dragged(list: HTMLElement, idAt: (index: number) => string | undefined, moved: (id: string, to: number) => void): void {
  list.addEventListener("pointerdown", (down) => {
    const handle = down.target instanceof Element ? down.target.closest<HTMLElement>(grip) : null;
    const child = handle === null ? undefined : [...list.children].find((each) => each.contains(handle));
    if (handle === null || child === undefined || !(child instanceof HTMLElement)) return;
    const id = idAt([...list.children].indexOf(child));
    if (id === undefined) return;
    down.preventDefault();
    handle.setPointerCapture(down.pointerId);
    child.classList.add("dragged");
    const move = (event: PointerEvent): void => void (child.style.transform = `translateY(${event.clientY - down.clientY}px)`);
    const end = (event: PointerEvent): void => {
      handle.removeEventListener("pointermove", move);
      child.classList.remove("dragged");
      child.style.transform = "";
      if (event.type === "pointerup") moved(id, placeOf(list, child, event.clientY));
    };
    handle.addEventListener("pointermove", move);
    handle.addEventListener("pointerup", end, { once: true });
    handle.addEventListener("pointercancel", end, { once: true });
  });
}

// placeOf is where a child lands: behind all others whose middle lies above.
function placeOf(list: HTMLElement, child: HTMLElement, y: number): number {
  return [...list.children].filter((each) => {
    const { top, height } = each.getBoundingClientRect();
    return each !== child && top + height / 2 < y;
  }).length;
}
