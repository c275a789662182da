import { equal, test } from "../../ui/testing.ts";
import { copyReminder } from "./copy_age.ts";

const day = 24 * 60 * 60 * 1000;
const now = Date.UTC(2026, 5, 30, 12);

test("copies: a lone rider is reminded after a month, nobody else and not before", () => {
  const said = (days: number, never = false, met = false): string => copyReminder({ met, since: { at: now - days * day, never }, now });
  equal([said(0), said(30), said(30.9), said(0, true), said(30, true)], ["", "", "", "", ""]);
  equal([said(31).includes("31"), said(400).includes("400"), said(31, true).includes("31")], [true, true, true]);
  equal(said(31) === said(31, true), false);
  equal([said(400, false, true), said(400, true, true)], ["", ""]);
  equal(copyReminder({ met: false, since: undefined, now }), "");
  equal(said(-3), ""); // a clock that was put back
});
