// Days as entries keep them ("2026-07-14"), by the calendar of the place where the phone is.

import { w } from "../../words/index.ts";

// dayOf is the day of a moment.
export function dayOf(at: number): string {
  const date = new Date(at);
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

// isDay tells whether a text is a day of the calendar: 30 February is none.
export function isDay(text: unknown): text is string {
  if (typeof text !== "string" || !/^\d{4}-\d\d-\d\d$/.test(text)) return false;
  const at = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(at) && new Date(at).toISOString().startsWith(text);
}

// daysFrom counts the days from one day to another; it is negative when the other lies before.
export function daysFrom(day: string, other: string): number {
  return Math.round((Date.parse(other) - Date.parse(day)) / 86_400_000);
}

// momentOf is a moment on that day: now when it is today, else its noon.
export function momentOf(day: string, now: number): number {
  return day === dayOf(now) ? now : new Date(`${day}T12:00:00`).getTime();
}

// dayAge tells how long ago a day was. What lies ahead, because clocks differ, is today.
export function dayAge(day: string, now: number): string {
  const n = daysFrom(day, dayOf(now));
  return n < 1 ? w("measureAge.today") : n === 1 ? w("measureAge.yesterday") : w("age.days", { n });
}
