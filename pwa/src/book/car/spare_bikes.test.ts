// What is asked of whole bikes, what is said of the answer, and how one goes out and comes back. Which is nearest is the calculator's.

import type { Json } from "../../log/op/json.ts";
import { equal, test } from "../../ui/testing.ts";
import { hex, now, record } from "../value/kit.test.ts";
import { endNow, type Fleet, fleetOf } from "./fleet.ts";
import { lentTwice } from "./lent.ts";
import { backChanges, gaveBikeChanges } from "./moves.ts";
import { type BikeVerdict, bikeLines, bikeMatchRequest } from "./spare_bikes.ts";

const built = (of: string, place: string, mm: number): ReturnType<typeof record> => record("measure", `${of} ${place}`, { of: hex(of), what: "as_built", place, mm, day: "2026-07-14" });
const fleetWith = (outs: readonly ReturnType<typeof record>[] = [], ins: readonly ReturnType<typeof record>[] = [], roof: Record<string, Json> = {}): Fleet => fleetOf({
  bikes: [
    record("bike", "own", { number: "114", rider: hex("ana"), brake: "rim", cleat: "Three bolts ", pedals: "hex" }), record("bike", "other", { number: "115" }),
    record("bike", "roof", { name: "Roof 2", spare: true, place: "roof", brake: "disc", ...roof }),
  ], people: [record("person", "ana", { name: "Ana" })], wheels: [], tyres: [], spares: [], outs, ins, sets: [],
});
const ask = (fleet: Fleet, measures: Parameters<typeof bikeMatchRequest>[2] = [], stopped: ReadonlySet<string> = new Set()): ReturnType<typeof bikeMatchRequest> => bikeMatchRequest(fleet.riders[0], fleet.bikes, measures, stopped);
const gave = (fleet: Fleet, at: number, rec: string): ReturnType<typeof record> => {
  const [change] = gaveBikeChanges(fleet.bikes[0]!, { rider: fleet.riders[at], number: fleet.riders[at]?.number ?? "", place: "", event: "" }, () => hex(rec), now);
  return record("spare_out", rec, change!.set as Record<string, Json>);
};

test("spare bikes: the question says what is known of both bikes, and no more", () => {
  const measures = [built("own", "saddle_height", 742), built("own", "reach", 520), built("roof", "saddle_height", 760), built("roof", "reach", 0)];
  equal(ask(fleetWith([], [], { cleat: "three bolts", pedals: "spanner" }), measures), {
    bike: { saddle_mm: 742, reach_mm: 520, cleat: "three bolts", pedals: "hex" }, spares: [{ id: hex("roof"), saddle_mm: 760, cleat: "three bolts", pedals: "spanner" }],
  });
  equal(ask(fleetWith(), [], new Set([hex("roof")])).spares[0]?.state, "stop");
  equal(bikeMatchRequest(undefined, [], [], new Set()).bike, {});
});

test("spare bikes: the answer in words", () => {
  const { bikes } = fleetWith();
  const said = (verdict: Omit<BikeVerdict, "id">, own = {}): string => bikeLines([{ id: hex("roof"), ...verdict }], own, bikes, now)[0]?.change ?? "";
  const reasons: BikeVerdict["reasons"] = [
    { code: "saddle", values: { bike: 742, spare: 760, minutes: 1 } }, { code: "longer", values: { bike: 520, spare: 525 } }, { code: "pedals", values: { what: "both", minutes: 3 } },
  ];
  equal(said({ fits: "with_change", minutes: 4, reasons }), "with a change: saddle to 742 mm, 5 mm longer in reach, move the pedals over: hex key and pedal spanner; about 4 min");
  equal(said({ fits: "with_change", minutes: 0, reasons: [{ code: "shorter", values: { bike: 520, spare: 518 } }] }, { saddle_mm: 742 }), "with a change: saddle stays at 742 mm, 2 mm shorter in reach");
  equal(said({ fits: "yes", minutes: 0, reasons: [] }, { saddle_mm: 742 }), "as it is: saddle stays at 742 mm");
  equal(said({ fits: "no", minutes: 0, reasons: [{ code: "stopped", values: {} }] }, { saddle_mm: 742 }), "no: may not be ridden");
});

test("spare bikes: one that is given is out with its rider, whose bike it is until it comes back", () => {
  const out = gave(fleetWith(), 0, "out");
  const given = fleetWith([out]);
  equal([given.loans[0]?.whole, given.loans[0]?.number, given.bikes[0]?.loan?.out, ask(given).spares[0]?.out_with], [true, "114", hex("out"), "114"]);
  equal([given.riders[0]?.on?.name, endNow(given.riders[0]!, "rear").brake, endNow(given.riders[1]!, "rear").brake], ["Roof 2", "disc", "disc"]);
  equal(endNow(fleetWith().riders[0]!, "rear").brake, "rim");
  const [back] = backChanges(given.loans[0]!, () => hex("back"), now);
  const home = fleetWith([out], [record("spare_in", "back", back!.set as Record<string, Json>)]);
  equal([back!.set["spare_bike"], home.loans, home.bikes[0]?.loan, home.riders[0]?.on], [hex("roof"), [], undefined, undefined]);
});

test("spare bikes: two cars that give the same bike leave two entries, and both are told", () => {
  const { loans } = fleetWith([gave(fleetWith(), 0, "one"), gave(fleetWith(), 1, "two")]);
  equal(lentTwice(loans).map((group) => group.map(({ number }) => number).sort()), [["114", "115"]]);
});
