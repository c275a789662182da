// Moments and days in words, as the person's locale writes them.

import { calendarDay, timeOfDay } from "../../words/date.ts";
import { w } from "../../words/index.ts";

// The local calendar decides what is today, not the number of hours.
function daysBetween(at: number, now: number): number {
  const midnight = (ms: number): number => new Date(ms).setHours(0, 0, 0, 0);
  return Math.round((midnight(now) - midnight(at)) / 86_400_000);
}

// whenWords tells a moment: "10:02 today", "10:02 yesterday", "14 Jul, 10:02".
export function whenWords(at: number, now: number): string {
  const time = timeOfDay(at);
  const days = daysBetween(at, now);
  if (days === 0) return w("when.today", { time });
  if (days === 1) return w("when.yesterday", { time });
  return w("when.day", { date: dateWords(at, now), time });
}

// clockWords is shorter where it goes without saying that today is meant.
export function clockWords(at: number, now: number): string {
  return daysBetween(at, now) === 0 ? timeOfDay(at) : whenWords(at, now);
}

// dateWords tells the day of a moment.
export function dateWords(at: number, now: number): string {
  return calendarDay(at, new Date(at).getFullYear() !== new Date(now).getFullYear());
}

// dayWords tells a day that is kept as "2026-07-14", and gives back what is none.
export function dayWords(day: string, now: number): string {
  const [, year, month, date] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(day) ?? [];
  if (year === undefined) return day;
  return dateWords(new Date(Number(year), Number(month) - 1, Number(date)).getTime(), now);
}
