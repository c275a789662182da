// The start. First the words, then the worker, because starting the calculator takes longest and happens beside the page;
// then the frame and the screen, in the look remembered from last time; the database answers while they are being drawn;
// last, what can wait: the service worker and asking the browser to keep the data.

import { App } from "./app.ts";
import { CalcClient, type WorkerLike } from "./calc-client.ts";
import { alone } from "./log/db/alone.ts";
import { openBook } from "./log/book.ts";
import { BookLog } from "./log/book_log.ts";
import { DraftBox } from "./log/db/draft.ts";
import { askToKeep, isKept } from "./log/db/persist.ts";
import { type Language, rememberedSettings, SettingsBox } from "./log/db/settings.ts";
import { Sync } from "./log/sync/sync.ts";
import { startSync } from "./log/sync/triggers.ts";
import { Router } from "./router.ts";
import { lazy } from "./lazy.ts";
import { forgetErased } from "./screens/pressure/forget_erased.ts";
import { screen as pressure } from "./screens/pressure/index.ts";
import { scripts, trusted } from "./trusted.ts";
import { showTheme } from "./ui/theme.ts";
import { watchUpdates } from "./update.ts";
import { locale, useLocale, w } from "./words/index.ts";
import { learn } from "./words/locale.ts";
import { choose, wantedLanguages } from "./words/wanted.ts";

// The words come before everything that speaks.
useLocale(wantedLanguages(rememberedSettings().language));
await learn("first").catch(() => undefined); // then it stays English
document.documentElement.lang = locale().words;

const calc = new CalcClient({
  makeWorker: () => new Worker(trusted(scripts.worker)) as WorkerLike,
  wasm: new URL(__WASM_URL__, document.baseURI).href,
  meanwhile: "serviceWorker" in navigator && navigator.serviceWorker.controller === null, // the calculator is not kept here yet
  fetch: (path, init) => fetch(path, init),
  onState: (state) => app.calculates(state),
  onTrouble: (details) => app.trouble(details),
});

const db = openBook();
const drafts = new DraftBox(db, (state) => {
  app.saved(state);
  if (state.kind === "saved") void keepOnce();
});
const settings = new SettingsBox(drafts);
const book = new BookLog(db, { now: () => Date.now(), label: matchMedia("(pointer: coarse)").matches ? w("device.phone") : w("device.computer") });
const sync = new Sync(book, { fetch: (path, init) => fetch(path, init), now: () => Date.now(), alone: (work) => alone("rimside-sync", work) });
settings.on(({ language }) => void speak(language));
showTheme(settings.current.theme);

const takeUpdate = { now: (): Promise<void> => Promise.resolve() };
const app = new App({ calc, drafts, settings, book, sync, takeUpdate: () => takeUpdate.now() });

// A fault that nobody caught is shown: a dead button is worse than a plain word.
addEventListener("error", (event) => app.trouble(event.error ?? event.message));
addEventListener("unhandledrejection", (event) => app.trouble(event.reason));

// The phone may take the app away at any of these moments, and will not ask again.
addEventListener("pagehide", () => drafts.leave());
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "hidden") drafts.leave();
});

// Pressure is what the app opens on; each other place has a script of its own.
const places = [
  lazy("checks", () => w("place.checks"), () => import("./screens/checks/index.ts")),
  lazy("packing", () => w("place.packing"), () => import("./screens/packing/index.ts")),
  lazy("car", () => w("place.car"), () => import("./screens/car/index.ts")),
  lazy("wheels", () => w("place.wheels"), () => import("./screens/wheels/index.ts")),
  lazy("settings", () => w("place.settings"), () => import("./screens/settings/index.ts")),
];
void new Router([pressure, ...places], (visit) => app.visit(visit)).start();
void settings.load();

// speak begins anew in another language: every word on the page would change.
async function speak(language: Language): Promise<void> {
  if (choose(wantedLanguages(language)).words === locale().words) return;
  await drafts.flush();
  location.reload();
}

let asked = false;

// keepOnce asks the browser to keep the data as soon as there is some: most answer without bothering the person.
async function keepOnce(): Promise<void> {
  if (asked) return;
  asked = true;
  if ((await isKept()) === "evictable") await askToKeep();
}

function whenIdle(work: () => void): void {
  if (document.readyState === "complete") setTimeout(work);
  else addEventListener("load", () => setTimeout(work), { once: true });
}

// A phone that has nothing of its own yet takes the book of the server that it meets.
sync.on(({ phase, otherBook }) => {
  if (phase === "otherBook") void takeServersBook(otherBook);
});

async function takeServersBook(theirs: string): Promise<void> {
  if (!(await book.isEmpty())) return;
  await book.takeBook(theirs);
  location.reload();
}

whenIdle(() => {
  for (const load of [pressure.later, ...places.map((place) => place.load)]) void load().catch(() => undefined); // told when somebody goes there
  forgetErased(book);
  startSync(sync, book);
  takeUpdate.now = watchUpdates({ offer: () => app.offerUpdate(), flush: () => drafts.flush() });
});
