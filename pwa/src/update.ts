// Keeps the app up to date without ever pulling it from under a person's hands: a new version waits until asked for.

import { scripts, trusted } from "./trusted.ts";

export interface Updates {
  // offer is called when a new version waits.
  readonly offer: () => void;
  // flush puts what is typed on the disk; the page reloads when it is done.
  readonly flush: () => Promise<unknown>;
}

const often = 60 * 60 * 1000; // ms between looks while the page stays open
const flushPatience = 3000; // ms: a phone that cannot save must still get the new version

// watchUpdates registers the service worker. The result takes over the waiting version.
export function watchUpdates(updates: Updates): () => Promise<void> {
  const container: ServiceWorkerContainer | undefined = navigator.serviceWorker;
  if (container === undefined) return () => Promise.resolve(); // plain http: no worker, and nothing to update
  const registering = register(container, updates);
  registering.catch((error: unknown) => console.info("Rimside works, but only with signal:", error));
  return async () => {
    await settled(updates.flush());
    (await registering).waiting?.postMessage("take over");
  };
}

async function register(container: ServiceWorkerContainer, updates: Updates): Promise<ServiceWorkerRegistration> {
  const before = await container.getRegistration();
  // At the very first visit the new worker claims this page too; that is no reason to reload it.
  let first = container.controller === null && (before?.active ?? null) === null;
  let reloading = false;
  container.addEventListener("controllerchange", () => {
    if (!first && !reloading) {
      reloading = true;
      void settled(updates.flush()).then(() => location.reload());
    }
    first = false;
  });
  const registration = await container.register(trusted(scripts.serviceWorker), { updateViaCache: "none" });
  watch(registration, updates.offer);
  return registration;
}

function watch(registration: ServiceWorkerRegistration, offer: () => void): void {
  const look = (): void => {
    if (registration.waiting !== null && registration.active !== null) offer();
  };
  registration.addEventListener("updatefound", () => registration.installing?.addEventListener("statechange", look));
  registration.installing?.addEventListener("statechange", look);
  look();
  const check = (): void => void registration.update().then(look, () => undefined); // no signal: next time
  check();
  setInterval(check, often);
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") check();
  });
}

// settled waits for a promise whatever becomes of it, and not for ever.
function settled(promise: Promise<unknown>): Promise<unknown> {
  const timeout = new Promise((resolve) => setTimeout(resolve, flushPatience));
  return Promise.race([promise.catch(() => undefined), timeout]);
}
