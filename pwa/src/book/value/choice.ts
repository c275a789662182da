// A choice out of a record: what only a newer app knows counts as not said.

export function chosen<C extends string>(choices: readonly C[], value: unknown): C | undefined {
  return choices.find((each) => each === value);
}
