// Days and times of day as the person's locale writes them.

import { locale } from "./wanted.ts";

const formats = new Map<string, Intl.DateTimeFormat>();

function written(at: number, options: Intl.DateTimeFormatOptions): string {
  const tag = locale().numbers;
  const name = `${tag} ${JSON.stringify(options)}`;
  let format = formats.get(name);
  if (format === undefined) formats.set(name, (format = new Intl.DateTimeFormat(tag, options)));
  return format.format(at);
}

// timeOfDay writes the time of a moment (ms): "10:02".
export function timeOfDay(at: number): string {
  return written(at, { hour: "numeric", minute: "2-digit" });
}

// calendarDay writes the day of a moment (ms): "14 Jul", or with its year.
export function calendarDay(at: number, withYear: boolean): string {
  return written(at, { day: "numeric", month: "short", ...(withYear && { year: "numeric" }) });
}
