import type { Device } from "../../log/sync/pairing.ts";
import { ServerRefusal, ServerTrouble } from "../../log/sync/server_api.ts";
import { equal, test } from "../../ui/testing.ts";
import { at, now } from "../value/kit.test.ts";
import { codeView, phoneViews, readCode, saidFault, typedFault, wayOf } from "./phones_view.ts";

const device = (id: string, more: Partial<Device> = {}): Device => ({ id, label: id, paired_at: 1, seen_at: now - 3 * 3600e3, revoked: false, here: false, ...more });
const lines = (devices: readonly Device[], own = ""): string[] => phoneViews(devices, own, now).map(({ name, line }) => `${name}: ${line}`);

test("phones: this one first, then who came last, and who is shut out at the end", () => {
  equal(lines([
    device("Lost", { revoked: true, seen_at: now }), device("Old", { seen_at: now - 5 * 86400e3 }), device("New"), device("Mine", { here: true, seen_at: 1 }), device("", { seen_at: 0 }),
  ]), ["Mine: this phone", "New: last seen 3 h ago", "Old: last seen 5 days ago", "Phone without a name: not seen here yet", "Lost: shut out · last seen just now"]);
});

test("phones: a server that lets everybody in cannot tell who asks, this phone can", () => {
  equal(lines([device("a"), device("b", { seen_at: 0 })], "b"), ["b: this phone", "a: last seen 3 h ago"]);
  equal(lines([device("a"), device("b", { here: true })], "a"), ["b: this phone", "a: last seen 3 h ago"], "the server knows better");
});

test("codes: spaces and hyphens do not count, anything else does", () => {
  equal(["123456", " 123 456 ", "123-456", "12\u00a034\u202f56"].map(readCode), Array(4).fill("123456"));
  equal(["", "12345", "1234567", "12345a", "１２３４５６"].map(readCode), Array(5).fill(""));
});

test("codes: what is wrong is told at its field, before anything is sent", () => {
  const field = (code: string, label: string): string | undefined => typedFault(code, label)?.field;
  equal([field("123 456", "Blue"), field("12", ""), field("123456", "  "), field("123456", "é".repeat(60)), field("123456", "é".repeat(61))],
    [undefined, "code", "label", undefined, "label"]);
});

test("codes: what the server says is told at the field it is about", () => {
  const said = (status: number, code: string, field = ""): string => {
    const fault = saidFault(new ServerRefusal(status, { code, field, message: "" }));
    return `${fault.field}: ${fault.words.split(/[,:.]/)[0] ?? ""}`;
  };
  equal([said(403, "wrong_code", "code"), said(422, "bad_request", "code"), said(422, "bad_request", "label"), said(429, "too_many_tries"), said(500, "internal")], [
    "code: That code is not right", "code: The code has six digits", "label: Give this phone a name of 1 to 60 characters", ": Too many codes were tried", ": The server did not do it",
  ]);
  equal(saidFault(new ServerTrouble("offline")).words.startsWith("The server does not answer"), true);
});

test("codes: good until when, by this phone's clock, and then no longer shown", () => {
  const code = { code: "012345", expires_at: at(12, 9) };
  const until = (clockOff: number, when = now): string => codeView(code, clockOff, when).until.replace(/\s/g, " ");
  equal(codeView(code, 0, now).figures, "012 345");
  equal([until(0), until(0, at(12, 8) + 1), until(3600e3, at(13, 8))],
    ["Good until 12:09 PM, 9 min left, for one phone.", "Good until 12:09 PM, 1 min left, for one phone.", "Good until 1:09 PM, 1 min left, for one phone."]);
  equal([codeView(code, 0, at(12, 9)).figures, until(0, at(12, 9))], ["", "This code is no longer good. Make another."]);
});

test("trust: over which way the app came", () => {
  const way = (url: string): string => wayOf(new URL(url));
  equal(["https://car.local:7467", "http://127.0.0.1:7467", "http://localhost", "http://[::1]:1", "http://car.local:7467", "http://192.168.1.2", "http://127.0.0.1.example"].map(way),
    ["https", "here", "here", "here", "plain", "plain", "plain"]);
});
