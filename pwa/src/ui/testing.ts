// Tests of the scripts, run in a real browser: each test is a name and a function that throws when it fails.

export interface Result {
  readonly name: string;
  readonly error: string; // empty: passed
}

const tests: { name: string; run: () => void | Promise<void> }[] = [];

export function test(name: string, run: () => void | Promise<void>): void {
  if (tests.some((each) => each.name === name)) throw new Error(`two tests are called ${name}`);
  tests.push({ name, run });
}

// equal compares by what JSON would write, save that undefined, NaN and the like are not lost.
export function equal(got: unknown, want: unknown, about = ""): void {
  const [left, right] = [written(got), written(want)];
  if (left !== right) throw new Error(`${about === "" ? "" : `${about}: `}got ${left}, want ${right}`);
}

function written(value: unknown): string {
  return JSON.stringify(value, (_, each: unknown) =>
    each === undefined || typeof each === "bigint" || (typeof each === "number" && !Number.isFinite(each)) ? `‹${String(each)}›` : each);
}

// rejected gives the error that a promise ends with, and throws when it ends well.
export async function rejected(promise: Promise<unknown>): Promise<unknown> {
  try {
    await promise;
  } catch (error) {
    return error;
  }
  throw new Error("it should have been refused");
}

// until waits for a condition.
export async function until(what: string, holds: () => boolean): Promise<void> {
  for (const end = Date.now() + 5000; !holds(); await new Promise((resolve) => setTimeout(resolve, 5))) {
    if (Date.now() > end) throw new Error(`waited in vain: ${what}`);
  }
}

// runAll runs every test, one after the other.
export async function runAll(): Promise<Result[]> {
  const results: Result[] = [];
  for (const { name, run } of tests) {
    let error = "";
    try {
      await run();
    } catch (thrown) {
      error = thrown instanceof Error ? thrown.stack ?? thrown.message : String(thrown);
      if (error === "") error = "failed without a word";
    }
    document.body.replaceChildren();
    results.push({ name, error });
  }
  return results;
}
