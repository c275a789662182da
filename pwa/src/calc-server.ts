// Asking the server for a calculation, for browsers that cannot run it themselves.

import type { Said } from "./calc-protocol.ts";

type Fetch = (path: string, init?: RequestInit) => Promise<Response>;

// NoServer means that nothing answered that speaks for Rimside: no network, or a host that only holds files.
export class NoServer extends Error {
  constructor(cause: unknown) {
    super("the server did not answer", { cause });
    this.name = "NoServer";
  }
}

export function askServer(fetch: Fetch, name: string, body: string): Promise<Said> {
  const headers = { "Content-Type": "application/json" };
  return saidBy(fetch, `api/calc/${encodeURIComponent(name)}`, { method: "POST", headers, body });
}

// findServer rejects with NoServer where none calculates.
export async function findServer(fetch: Fetch): Promise<void> {
  await saidBy(fetch, "api/health", {});
}

async function saidBy(fetch: Fetch, path: string, init: RequestInit): Promise<Said> {
  try {
    const response = await fetch(path, { ...init, cache: "no-store" });
    const json = (response.headers.get("Content-Type") ?? "").startsWith("application/json");
    if (!json) throw new Error(`${path} answered ${response.status} without JSON`);
    return { status: response.status, body: await response.text() };
  } catch (error) {
    throw new NoServer(error);
  }
}
