import { equal, test } from "../../ui/testing.ts";
import { at, now } from "../value/kit.test.ts";
import { clockWarning, outsideWords, phaseWords, statusLine, type SyncFacts } from "./sync_view.ts";

const idle: SyncFacts = { phase: "idle", fault: "", unsent: 0, lastMet: at(10, 2), clockOff: 0, done: 0, total: 0 };
const line = (change: Partial<SyncFacts>): string => statusLine({ ...idle, ...change }, now).replace(/\s/g, " ");

test("status line: saved here, not yet there, last synced", () => {
  equal(line({}), "All saved on this phone · last synced 10:02 AM");
  equal(line({ unsent: 3 }), "All saved on this phone · 3 not yet on the server · last synced 10:02 AM");
  equal(line({ unsent: 3, lastMet: at(10, 2, 1), phase: "unreachable" }), "All saved on this phone · 3 not yet on the server · last synced 10:02 AM yesterday");
  equal(line({ phase: "never", lastMet: undefined }), "All saved on this phone");
});

test("status line: long work tells how far it is, short work does not flicker", () => {
  equal(line({ phase: "sending", unsent: 900, done: 500, total: 1400 }), "All saved on this phone · 900 not yet on the server · sending 500 of 1400");
  equal(line({ phase: "fetching", done: 2000, total: 10000 }), "All saved on this phone · fetching 2000 of 10000");
  equal(line({ phase: "sending", unsent: 1, done: 0, total: 1 }), "All saved on this phone · 1 not yet on the server · last synced 10:02 AM");
});

test("clock: which way and by how much it is off", () => {
  const warned = (clockOff: number): string => clockWarning({ ...idle, clockOff });
  equal(warned(0), "");
  equal([warned(120_000), warned(-3 * 3600e3), warned(2.5 * 3600e3), warned(400 * 86400e3)].map((words) => /clock is (.*) the server’s/.exec(words)?.[1]),
    ["2 min ahead of", "3 h behind", "2.5 h ahead of", "400 days ahead of"]);
});

test("phases: each says what it means", () => {
  const words = (phase: SyncFacts["phase"], unsent = 0): string => phaseWords({ ...idle, phase, unsent });
  equal((["never", "idle", "sending", "fetching", "unreachable", "otherBook", "notPaired", "shutOut"] as const).map((phase) => words(phase).length > 20), Array(8).fill(true));
  equal(words("idle") === words("idle", 2), false);
});

test("outside: the status line tells why nothing goes to the server, and only then", () => {
  const words = (phase: SyncFacts["phase"]): string => outsideWords({ ...idle, phase });
  equal((["never", "idle", "sending", "fetching", "unreachable"] as const).map(words), Array(5).fill(""));
  equal((["otherBook", "notPaired", "shutOut"] as const).map((phase) => words(phase).includes("nothing ")), Array(3).fill(true));
});
