// What this phone remembers of being let in: as which device it counts, and that this device was shut out (its session was
// revoked; "shut_out" is the word on the wire). The server says that once and takes the cookie away; from then on it knows
// this phone no more than any stranger.

import type { Tables } from "../db/tables.ts";

export function noteDevice(tables: Tables, device: string): Promise<void> {
  return tables.write(["meta"], async (tx) => tx.put("meta", [{ name: "device", value: device }, { name: "out", value: "" }]));
}

export function noteShutOut(tables: Tables, device: string): Promise<void> {
  return tables.write(["meta"], async (tx) => tx.put("meta", [{ name: "out", value: device }]));
}

export async function wasShutOut(tables: Tables, device: string): Promise<boolean> {
  const [out] = await tables.read(["meta"], (tx) => tx.get("meta", ["out"]));
  return out?.value === device;
}
