// The screen stays on while a page is open, where the browser can. The browser lets go of it whenever the page is out of sight.

export async function stayAwake(closed: AbortSignal): Promise<boolean> {
  if (!("wakeLock" in navigator)) return false;
  let lock: WakeLockSentinel | undefined;
  const hold = async (): Promise<boolean> => {
    if (closed.aborted || document.visibilityState !== "visible") return false;
    try {
      lock = await navigator.wakeLock.request("screen");
      return true;
    } catch {
      return false; // low battery, or not allowed: the phone decides
    }
  };
  document.addEventListener("visibilitychange", () => void hold(), { signal: closed });
  closed.addEventListener("abort", () => void lock?.release().catch(() => undefined));
  return hold();
}
