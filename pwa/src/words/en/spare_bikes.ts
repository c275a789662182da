// The words of whole bikes on the roof.

export const spareBikeWords = {
  "spareBike.one": "Bike",
  "spareBike.others": "Other spare bikes",
  "spareBike.none": "No spare bike is free. A bike becomes a spare one in Wheels, under Team car.",
  "spareBike.saddle": "saddle to {mm} mm",
  "spareBike.saddleStays": "saddle stays at {mm} mm",
  "spareBike.saddleAsk": "set the saddle by eye",
  "spareBike.longer": "{mm} mm longer in reach",
  "spareBike.shorter": "{mm} mm shorter in reach",
  "spareBike.reachUnknown": "compare the reach by eye",
  "spareBike.pedals": "move the pedals over",
  "spareBike.pedalsHex": "move the pedals over: hex key",
  "spareBike.pedalsSpanner": "move the pedals over: pedal spanner",
  "spareBike.pedalsBoth": "move the pedals over: hex key and pedal spanner",
  "spareBike.asItIs": "as it is: {why}",
  "spareBike.on": "Rides {spare} since {clock}.",
  "spareBike.caution": "Never pull a seatpost past its mark. The left pedal has a left-hand thread. Try both brake levers before it goes: front and rear may be the other way round.",
} as const;
