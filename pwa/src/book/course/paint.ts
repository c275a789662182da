// Ground painted onto a course: stretches from kilometre to kilometre, without gaps, in order.

export interface Painted {
  readonly kind: string; // a ground's key
  readonly from: number; // km
  readonly to: number;
}

export const mostStretches = 50; // as many as a day's ground takes

// paint lays a ground from one kilometre to another over what was there. Neighbours of one kind become one.
export function paint(course: readonly Painted[], kind: string, one: number, other: number): readonly Painted[] {
  const whole = course[course.length - 1]?.to ?? 0;
  const from = Math.max(0, Math.min(one, other));
  const to = Math.min(whole, Math.max(one, other));
  if (!(to > from)) return course;
  const parts: Painted[] = [];
  for (const each of course) {
    if (each.from < from) parts.push({ ...each, to: Math.min(each.to, from) });
  }
  parts.push({ kind, from, to });
  for (const each of course) {
    if (each.to > to) parts.push({ ...each, from: Math.max(each.from, to) });
  }
  return parts.reduce<readonly Painted[]>((out, each) => {
    const last = out[out.length - 1];
    return last?.kind === each.kind ? [...out.slice(0, -1), { ...last, to: each.to }] : [...out, each];
  }, []);
}
