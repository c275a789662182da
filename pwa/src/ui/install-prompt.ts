// What the browser tells about installing. It may come at any time after the start, so it is caught once, here.

interface InstallEvent extends Event {
  prompt(): Promise<unknown>;
}

let offered: InstallEvent | undefined;
const heard = new Set<() => void>();

addEventListener("beforeinstallprompt", (event) => {
  event.preventDefault(); // the page has its own, calmer offer
  offered = event as InstallEvent;
  for (const hear of heard) hear();
});

addEventListener("appinstalled", () => {
  offered = undefined;
  for (const hear of heard) hear();
});

export type InstallWay = "done" | "button" | "ios" | "menu";

// installWay tells how this browser installs an app.
export function installWay(): InstallWay {
  if (standalone()) return "done";
  if (offered !== undefined) return "button";
  return "standalone" in navigator ? "ios" : "menu"; // only the iOS browser has that property
}

function standalone(): boolean {
  const ios = "standalone" in navigator && navigator.standalone === true;
  return ios || matchMedia("(display-mode: standalone)").matches;
}

// onInstallWay hears when installWay may have changed.
export function onInstallWay(hear: () => void, signal?: AbortSignal): void {
  heard.add(hear);
  signal?.addEventListener("abort", () => heard.delete(hear));
}

// install shows the browser's own question. It can be used once; the browser offers it again when it likes.
export async function install(): Promise<void> {
  const event = offered;
  offered = undefined;
  await event?.prompt();
  for (const hear of heard) hear();
}
