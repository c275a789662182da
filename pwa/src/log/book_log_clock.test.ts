import { equal, test } from "../ui/testing.ts";
import { newRec } from "./book_log.ts";
import { passed, phone, type Phone } from "./book_log_kit.test.ts";
import { t0 } from "./db/kit.test.ts";
import { valueOf } from "./op/merge.ts";

const day = 86_400_000;

const set = (on: Phone, kpa: number): Promise<unknown> => on.log.save([{ rec: newRec(), kind: "pressure_set", set: { kpa } }]);

// lastSet is what a start line goes by: the newest entry.
async function lastSet(on: Phone): Promise<unknown> {
  return valueOf((await on.log.all("pressure_set")).toSorted((a, b) => b.newest - a.newest)[0], "kpa");
}

test("clock: an entry from a clock that was wrong never rules what is newest, whichever way and whoever looks", async () => {
  const clocks = { "1970": -t0, "+400 days": 400 * day, "+11 years": 11 * 365 * day, "-200 days": -200 * day };
  for (const [name, off] of Object.entries(clocks)) {
    const [wrong, right] = [phone(), phone()];
    await set(right, 300);
    wrong.clock.now = t0 + off;
    await wrong.log.clockIsOff(off); // its own screen knows by the server
    await set(wrong, 999);
    right.clock.now = t0 + 60_000;
    await set(right, 310);
    await passed(wrong.log, right.log);
    await passed(right.log, wrong.log);
    equal(await lastSet(right), 310, name);
    if (off < 0) equal(await lastSet(wrong), 310, `${name}, on its own screen`); // one ahead is told that it is, and believes itself
    const strange = (await right.log.all("pressure_set")).find((state) => valueOf(state, "kpa") === 999);
    equal(off < 0 || strange?.newest === 0, true, `${name}: shown, with a question`);
    wrong.clock.now = t0 + 120_000; // and back
    await wrong.log.clockIsOff(0);
    await set(wrong, 320);
    await passed(wrong.log, right.log);
    right.clock.now = t0 + 180_000;
    equal([await lastSet(right), await lastSet(wrong)], [320, 320], `${name}, and back`);
  }
});

test("clock: what lies less than a day ahead counts, and how far a clock is off outlives the page", async () => {
  const held = phone();
  await held.log.clockIsOff(-200 * day);
  const tables = await held.log.tables;
  const again = phone(tables);
  await again.log.ready;
  equal([again.log.now, again.log.clockOff], [t0 + 200 * day, -200 * day]);
  const [ana, ben] = [phone(), phone()];
  ana.clock.now = t0 + day - 1000;
  await set(ben, 300);
  await set(ana, 310);
  await passed(ana.log, ben.log);
  equal(await lastSet(ben), 310);
});
