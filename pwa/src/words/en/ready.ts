// Whether a bike may be ridden, in the same words on every screen.

export const readyWords = {
  // family: ready.state.
  "ready.state.stop": "Do not ride",
  "ready.state.care": "Ride with care",
  "ready.state.no_fault_found": "No fault found",
  "ready.state.not_looked_at": "Not looked at",
  // family: ready.line.
  "ready.line.stop": { by: "n", one: "Do not ride: {n} reason", other: "Do not ride: {n} reasons" },
  "ready.line.care": { by: "n", one: "Ride with care: {n} reason", other: "Ride with care: {n} reasons" },
  "ready.line.fine": "No fault found, {when}",
  "ready.line.old": "Not looked at since {when}",
  "ready.line.never": "Not looked at",
  "ready.line.unknown": "May it be ridden? That needs the calculator, which does not run here.",
  "ready.label": "May it be ridden?",
  "ready.ofBike": "{bike}: {state}",

  "ready.look": "No fault found: {looked} of {asked} checked",
  "ready.lookMore": "No fault found: {looked} of {asked} checked; {more} more not opened",
  "ready.lookAt": "{moment}, {when}",
  "ready.lastAt": "Last look: {moment}, {when}",
  "ready.never": "No walk-around was ended on this bike.",

  "ready.found": "found {when}",
  // family: ready.measured.
  "ready.measured.rotor_thickness": "Rotor {mm} mm thick, the least is {limit} mm",
  "ready.measured.rotor_runout": "Rotor runs out {mm} mm, the most is {limit} mm",
  "ready.measured.rim_runout": "Rim runs out {mm} mm, the most is {limit} mm",
  "ready.measured.pads": "Brake pad {mm} mm, the least is more than {limit} mm",
  "ready.measured.rim_wall": "Rim wall {mm} mm, the least is more than {limit} mm",
  "ready.measured.room": "Clearance {mm} mm, the least is {limit} mm",
  // family: ready.end.
  "ready.end.front": "Front",
  "ready.end.rear": "Rear",
  "ready.measuredAt": "measured {when}",
  "ready.crash": "A crash, and no walk-around after it",
  "ready.journey": "A journey, and no walk-around after it",
  "ready.arrival": { by: "n", one: "{n} step left before it is ridden", other: "{n} steps left before it is ridden" },
  "ready.skipped": { by: "n", one: "{n} of {asked} rows not looked at", other: "{n} of {asked} rows not looked at" },
  "ready.pairSizes": "tyre {tyre} mm on {inner} mm inside",
  // family: ready.pair.
  "ready.pair.bead_differs": "Tyre and rim have different bead seats",
  "ready.pair.not_for_hookless": "This tyre is not named for hookless rims",
  "ready.pair.hookless_too_narrow": "This tyre is too narrow for this hookless rim",
  "ready.pair.outside_rim_table": "The rim’s own table does not allow this tyre",
  "ready.pair.too_narrow": "This tyre is too narrow for this rim",
  "ready.pair.too_wide": "This tyre is too wide for this rim",
  "ready.pair.other": "This tyre may not go on this rim",

  "ready.whatWasDone": "What was done",
  "ready.show": "Show",
  "ready.more": { by: "n", one: "{n} more reason", other: "{n} more reasons" },

  // family: checks.moment.
  "checks.moment.start": "At the start line",
  "checks.moment.evening": "The evening before",
  "checks.moment.after": "After the ride",
  "checks.moment.wash_day": "On wash day",
  "checks.moment.crash": "After a crash or a fall",
  "checks.moment.arrival": "On arrival, unpacked",
  // family: checks.station.
  "checks.station.front_wheel": "Front wheel",
  "checks.station.front_brake": "Front brake",
  "checks.station.bar": "Bar and stem",
  "checks.station.frame": "Frame",
  "checks.station.rear_wheel": "Rear wheel",
  "checks.station.rear_brake": "Rear brake",
  "due.go": "Do it now",
} as const;
