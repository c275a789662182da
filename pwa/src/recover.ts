// The repair page: throws away the stored program files of the app and unregisters its worker. It never touches data,
// and it needs neither the app nor its calculator.

import { w } from "./words/recover.ts";
import { locale } from "./words/wanted.ts";
import { el } from "./ui/el.ts";
import { setText } from "./ui/part.ts";

const app = new URL(location.pathname.replace(/recover(\/(index\.html)?)?$/, ""), location.origin);

async function clear(): Promise<void> {
  const names = "caches" in globalThis ? (await caches.keys()).filter((name) => name.startsWith("rimside-")) : [];
  await Promise.all(names.map((name) => caches.delete(name)));
  const container: ServiceWorkerContainer | undefined = navigator.serviceWorker;
  const registrations = container === undefined ? [] : await container.getRegistrations();
  // Other apps may live beside this one on the same host.
  const own = registrations.filter((registration) => registration.scope === app.href);
  await Promise.all(own.map((registration) => registration.unregister()));
}

function page(): void {
  const told = el("p", { role: "status" });
  const back = el("a", { class: "button", href: app.href }, w("recover.back"));
  const go = el("button", { type: "button", class: "button primary", on: { click: () => void repair() } }, w("recover.go"));

  async function repair(): Promise<void> {
    go.disabled = true;
    setText(told, w("recover.busy"));
    try {
      await clear();
      setText(told, w("recover.done"));
    } catch (error) {
      setText(told, w("recover.failed", { reason: String(error) }));
    } finally {
      go.disabled = false;
    }
  }

  document.documentElement.lang = locale().words;
  document.title = w("recover.title");
  document.querySelector("main")?.replaceChildren(
    el("h1", {}, w("recover.title")),
    el("p", {}, w("recover.text")),
    el("p", {}, w("recover.keeps")),
    el("p", { class: "row" }, go, back),
    told);
}

page();
