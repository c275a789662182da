// Reminders as a calendar file (RFC 5545): whole days with an alarm, each under an id of its own that stays, so that a
// changed reminder takes the place of the old one.

export interface Reminder {
  readonly uid: string;
  readonly day: string; // "2026-07-14"
  readonly title: string;
  readonly text: string;
  readonly alarmHours: number; // after the day's midnight; below zero on the evening before
}

// calendarText writes the file.
export function calendarText(reminders: readonly Reminder[], now: number): string {
  const stamp = new Date(now).toISOString().replace(/[-:]/g, "").replace(/\.\d+/, "");
  const events = reminders.flatMap(({ uid, day, title, text, alarmHours }) => [
    "BEGIN:VEVENT", `UID:${escaped(uid)}`, `DTSTAMP:${stamp}`, `DTSTART;VALUE=DATE:${plainDay(day)}`, `DTEND;VALUE=DATE:${plainDay(nextDay(day))}`,
    `SUMMARY:${escaped(title)}`, ...(text === "" ? [] : [`DESCRIPTION:${escaped(text)}`]), "TRANSP:TRANSPARENT",
    "BEGIN:VALARM", "ACTION:DISPLAY", `DESCRIPTION:${escaped(title)}`, `TRIGGER:${alarmHours < 0 ? "-" : ""}PT${Math.abs(alarmHours)}H`, "END:VALARM", "END:VEVENT",
  ]);
  return ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Rimside//Wheel book//EN", "CALSCALE:GREGORIAN", "METHOD:PUBLISH", ...events, "END:VCALENDAR"].map(folded).join("\r\n") + "\r\n";
}

// escaped: RFC 5545, 3.3.11.
function escaped(text: string): string {
  return text.replace(/[\u0000-\u0008\u000B-\u001F\u007F]/g, "").replace(/[\\;,]/g, (sign) => `\\${sign}`).replace(/\r\n|\n|\r/g, "\\n");
}

const longest = 75; // octets of a line, RFC 5545, 3.1

// folded breaks a long line between characters, not within one.
function folded(line: string): string {
  const encoder = new TextEncoder();
  const lines: string[] = [];
  let current = "";
  let size = 0;
  for (const sign of line) {
    const octets = encoder.encode(sign).length;
    if (size + octets > longest) {
      lines.push(current);
      current = " ";
      size = 1;
    }
    current += sign;
    size += octets;
  }
  return [...lines, current].join("\r\n");
}

function plainDay(day: string): string {
  return day.replaceAll("-", "");
}

function nextDay(day: string): string {
  const next = new Date(`${day}T00:00:00Z`);
  next.setUTCDate(next.getUTCDate() + 1);
  return next.toISOString().slice(0, 10);
}
