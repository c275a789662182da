// Which spare bike comes nearest, and what to change on it.

import type { Json } from "../../log/op/json.ts";
import { equal, test } from "../../ui/testing.ts";
import { hex, record } from "../value/kit.test.ts";
import type { Rider, SpareBike } from "./fleet.ts";
import { bikeLines } from "./spare_bikes.ts";

const built = (of: string, place: string, mm: number): ReturnType<typeof record> => record("measure", `${of} ${place}`, { of: hex(of), what: "as_built", place, mm, day: "2026-07-14" });
const spare = (name: string, set: Record<string, Json> = {}): SpareBike => ({ bike: record("bike", name, { spare: true, ...set }), name, place: "roof" });
const rider: Rider = { bike: record("bike", "own", {}), number: "114", name: "", bikeName: "", person: undefined, wheels: { front: undefined, rear: undefined }, ends: { front: { side: "front", brake: "disc" }, rear: { side: "rear", brake: "disc" } } };
const own = [built("own", "saddle_height", 742), built("own", "reach", 380)];
const names = (bikes: readonly SpareBike[], measures: Parameters<typeof bikeLines>[2], stopped: ReadonlySet<string> = new Set()): string[] => bikeLines(rider, bikes, measures, stopped).map(({ name }) => name);

test("spare bikes: the nearest first; reach counts for more, and what is not known stands behind", () => {
  const near = [built("near", "saddle_height", 760), built("near", "reach", 381)];
  const far = [built("far", "saddle_height", 742), built("far", "reach", 395)];
  const measures = [...own, ...near, ...far, built("half", "saddle_height", 742)];
  equal(names([spare("half"), spare("far"), spare("near"), spare("none")], measures), ["near · roof", "far · roof", "half · roof", "none · roof"]);
  equal(names([spare("near"), spare("far")], measures, new Set([hex("near")])), ["far · roof"]); // one that may not be ridden is never offered
});

test("spare bikes: what to change", () => {
  const change = (measures: Parameters<typeof bikeLines>[2], set: Record<string, Json> = {}): string => bikeLines(rider, [spare("s", set)], measures, new Set())[0]?.change ?? "";
  equal(change([...own, built("s", "saddle_height", 760), built("s", "reach", 385)], { pedals: "hex" }), "saddle to 742 mm, 5 mm longer in reach, move the pedals over: hex key");
  equal(change([...own, built("s", "saddle_height", 742), built("s", "reach", 380)], { pedals: "spanner" }), "saddle stays at 742 mm, move the pedals over: pedal spanner");
  equal(change([built("s", "saddle_height", 742)]), "set the saddle by eye, compare the reach by eye, move the pedals over");
});
