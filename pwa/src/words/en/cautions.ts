// The cautions, which can be read without any calculator; part of the one catalogue.

export const cautionWords = {
  // family: cautions.
  "cautions.title": "Cautions",
  "cautions.intro": "What is printed on the part and the maker’s manual come before this app. So do local rules and a qualified mechanic.",
  "cautions.seating.title": "Seating a bead",
  "cautions.seating.text": "Cover your eyes and keep face and body out of line with the wheel. Stop at the lower of the tyre’s and the rim’s limit. If the bead is not up by then, let the air out, soap it and start again; a little more air is never the answer. A tyre not made for tubeless on a converted rim: 2.76 bar (40 psi) at most.",
  "cautions.hookless.title": "Hookless rims",
  "cautions.hookless.text": "Hookless means a straight edge, no hook. Only a tyre that names hookless, with a tubeless bead, and wide enough for the rim. Never above 5 bar, or the lower mark on rim or tyre. Do not leave it in the heat at the limit. Look along the bead line all round. In doubt, do not inflate it.",
  "cautions.co2.title": "CO2 cartridges",
  "cautions.co2.text": "They turn far colder than ice and stick to skin: use a glove or the sleeve. Point them away from people and never unscrew one under pressure. Keep them below 50 °C, so not in a parked car in the sun. In a car or tent, open a window. One whole cartridge can burst a narrow tyre.",
  "cautions.brakes.title": "Brakes",
  "cautions.brakes.text": "With the wheel out, leave the lever alone unless a spacer sits between the pads. Rotors burn fingers after a descent. No spray anywhere near a rotor. New pads or rotors brake weakly until bedded in. Brake hard twice before you move off.",
  "cautions.held.title": "The wheel in the frame",
  "cautions.held.text": "No hands off the bars until the axle is tight, in its own thread, and the wheel spins free. If a thread turns stiffly, stop.",
  "cautions.carbon.title": "Carbon",
  "cautions.carbon.text": "After a crash, a fall or a bolt turned too far it can look sound and fail later. Clamp a work stand to the seat post, never to a tube. Splinters: wear gloves.",
  "cautions.torque.title": "Torque",
  "cautions.torque.text": "The number on the part wins. A range in this app is no permission to use it.",
  "cautions.spinning.title": "Anything that turns",
  "cautions.spinning.text": "Keep fingers clear of spokes, rotor and chain while anything moves.",
  "cautions.flying.title": "Flying",
  "cautions.flying.text": "Rules differ by country and change. A filled cartridge can cost you the flight. Ask the airline.",
  "cautions.roadside.title": "At the roadside",
  "cautions.roadside.text": "Stand behind the barrier or the car, in bright clothing, and get the rider off the road first. A doubtful wheel goes into the car, not back into the race.",
  "cautions.tool.title": "This app",
  "cautions.tool.text": "It gives advice from models and rules of thumb. It cannot see a crack, and some of its numbers are not confirmed by measurement.",
} as const;
