// Whether the browser keeps this phone's data when space runs short. It decides; the app can only ask and tell.

export type Kept = "kept" | "evictable" | "unknown";

export interface Space {
  readonly usedMB: number;
  readonly quotaMB: number;
}

const manager = (): StorageManager | undefined => navigator.storage as StorageManager | undefined; // absent over plain http

export async function isKept(): Promise<Kept> {
  try {
    const kept = await manager()?.persisted();
    return kept === undefined ? "unknown" : kept ? "kept" : "evictable";
  } catch {
    return "unknown";
  }
}

// askToKeep asks the browser, which may ask the person.
export async function askToKeep(): Promise<Kept> {
  try {
    const kept = await manager()?.persist();
    return kept === undefined ? "unknown" : kept ? "kept" : "evictable";
  } catch {
    return "unknown";
  }
}

export async function space(): Promise<Space | undefined> {
  try {
    const { usage, quota } = (await manager()?.estimate()) ?? {};
    if (usage === undefined || quota === undefined) return undefined;
    return { usedMB: usage / 1e6, quotaMB: quota / 1e6 };
  } catch {
    return undefined;
  }
}
