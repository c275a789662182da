// Numbers as the person's locale writes them. Formatters are slow to make, so each is made once.

import { locale } from "./wanted.ts";

const formats = new Map<string, Intl.NumberFormat>();

function format(least: number, most: number): Intl.NumberFormat {
  const tag = locale().numbers;
  const name = `${tag} ${least} ${most}`;
  let made = formats.get(name);
  if (made === undefined) {
    // No grouping: "1100 m" must not be read as a decimal by a person from elsewhere.
    made = new Intl.NumberFormat(tag, { minimumFractionDigits: least, maximumFractionDigits: most, useGrouping: false });
    formats.set(name, made);
  }
  return made;
}

// fixed writes a number with exactly so many decimals. A rounded-off minus zero is written as zero.
export function fixed(value: number, decimals: number): string {
  const scale = 10 ** decimals;
  return format(decimals, decimals).format(Math.round(value * scale) === 0 ? 0 : value);
}

// precise writes a constant with all the digits it has, twelve at most.
export function precise(value: number): string {
  return new Intl.NumberFormat(locale().numbers, { maximumSignificantDigits: 12, useGrouping: false }).format(value);
}

// plain writes a number with as many decimals as it has, three at most.
export function plain(value: number): string {
  return format(0, 3).format(value);
}
