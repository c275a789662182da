import { equal, test } from "../../ui/testing.ts";
import { calendarText } from "./calendar.ts";

const now = Date.UTC(2026, 6, 14, 9, 5, 7, 123);

test("calendar: one reminder, as RFC 5545 writes it", () => {
  equal(calendarText([{ uid: "a@rimside", day: "2026-12-31", title: "Sealant; front, rear", text: "Two months\nare over \\o/", alarmHours: -6 }], now).split("\r\n"), [
    "BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Rimside//Wheel book//EN", "CALSCALE:GREGORIAN", "METHOD:PUBLISH",
    "BEGIN:VEVENT", "UID:a@rimside", "DTSTAMP:20260714T090507Z", "DTSTART;VALUE=DATE:20261231", "DTEND;VALUE=DATE:20270101",
    "SUMMARY:Sealant\\; front\\, rear", "DESCRIPTION:Two months\\nare over \\\\o/", "TRANSP:TRANSPARENT",
    "BEGIN:VALARM", "ACTION:DISPLAY", "DESCRIPTION:Sealant\\; front\\, rear", "TRIGGER:-PT6H", "END:VALARM", "END:VEVENT", "END:VCALENDAR", "",
  ]);
});

test("calendar: lines are folded at 75 octets, between characters, and unfold to the same", () => {
  const title = "Ü🚲 שלום ".repeat(30);
  const text = calendarText([{ uid: "a", day: "2026-02-28", title, text: "", alarmHours: 9 }], now);
  const encoder = new TextEncoder();
  equal(text.split("\r\n").every((line) => encoder.encode(line).length <= 75), true);
  equal(text.replaceAll("\r\n ", "").includes(`SUMMARY:${title}`), true);
  equal(text.includes("\uFFFD"), false);
});
