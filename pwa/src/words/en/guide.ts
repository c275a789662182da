// The words of the measuring guide; part of the one catalogue.

export const guideWords = {
  "guide.title": "Measuring guide",
  "guide.intro": "Measured once, a number serves for months. Each page has a drawing, the steps, and a button to write down what you read.",
  "guide.needed": "You need: {things}.",
  "guide.note": "Write down",
  "guide.use": "Used for",
  "guide.now": "Measure now",
  "guide.measure": "{what}: {name}",
  "guide.nothing": "Nothing of the kind is in the book yet.",
  "guide.add": "Add one",

  // family: guideTitle.
  "guideTitle.width": "Tyre width",
  "guideTitle.inner": "Rim inner width",
  "guideTitle.load": "Load on each wheel",
  "guideTitle.gauge": "What your gauge is off",
  "guideTitle.rotor": "Rotor thickness",
  "guideTitle.runout": "Run-out of rim and rotor",

  // family: guideNeeds.
  "guideNeeds.width": "a vernier caliper, a gauge and a pump",
  "guideNeeds.inner": "a vernier caliper; first of all, good light to read the rim",
  "guideNeeds.load": "a bathroom scale, a block of wood or books as high as the scale, a helper",
  "guideNeeds.gauge": "your gauge and one that you trust, one tyre",
  "guideNeeds.rotor": "a vernier caliper with narrow jaws or a micrometer, a clean cloth with isopropyl alcohol",
  "guideNeeds.runout": "a cable tie, a feeler gauge or slips of paper, something to hold the wheel off the ground",

  // family: guideSteps.
  "guideSteps.width": "Fit the tyre to the rim you ride and set it to the pressure you ride. It grows in its first days: measure now, and again after a week.\nHold the caliper square across the wheel, its jaws at the widest place of the casing. Where side knobs stick out further, go between them.\nClose it until both jaws just touch. Do not squeeze: it should slide off with a light drag.\nRead it. Turn the wheel a third and read again, and once more: three places. The mean counts.",
  "guideSteps.inner": "Look on the rim first. “622 × 23” or “23c” means 23 mm inside: then no tyre has to come off.\nOtherwise let all the air out and take the tyre off.\nPut the small inside jaws of the caliper between the two edges that hold the bead, where they are closest.\nRock it a little: the smallest reading is the square one. Do it in three places, clear of the joint.",
  "guideSteps.load": "Put the scale and the block on a firm level floor, as far apart as the axles. A spirit level or a straight board shows whether they are equally high.\nLoad the bike as for the ride: bottles, bags, tools. Front wheel on the middle of the scale, rear wheel on the block.\nThe helper holds the saddle from the side without lifting. The rider gets on in riding clothes, hands where they mostly are, feet on the pedals.\nRead the scale when it is still. Then turn the bike round: rear wheel on the scale.\nBoth together are the rider and the bike. If they are more than 2 kg off, the heights were not equal: do it again.",
  "guideSteps.gauge": "Take one tyre, cool and out of the sun, at about your riding pressure.\nRead it with your gauge.\nRead it with the other one at once: each reading lets a little air out.\nRead it with yours again. When the first and the last differ, take the number between them.\nUse a gauge you have a reason to trust. Of two unknown gauges, nobody can tell which is off.",
  "guideSteps.rotor": "Let the rotor cool. Wheel out, or still and held.\nRead the minimum thickness on the rotor, such as “MIN TH 1.5”. It wins over every other number.\nWipe the track with the cloth. No fingers on it.\nMeasure in the middle of the track, where the pads rub. The outer edge is not rubbed and stays thick.\nGo round in four places, clear of the holes. The thinnest counts.",
  "guideSteps.runout": "Hold the wheel off the ground, its axle tight as for the ride. For the rim: tyre at riding pressure.\nTie the cable tie to the stay or the fork leg and cut it so that its end nearly touches the rim’s side, or the rotor’s track.\nTurn the wheel slowly by the tyre. Find the widest and the narrowest gap and measure both.\nWidest less narrowest is the run-out: the full reading of one turn.\nFor the rim do the same from below, up and down.",

  // family: guideCare.
  "guideCare.width": "Never above the lower maximum on tyre and rim. Measure with the wheel still.",
  "guideCare.inner": "All the air out before you lift a bead. A cut rim edge or a spoke end cuts fingers.",
  "guideCare.load": "Feet can slip off the block: the helper holds the bike until the rider is off again.",
  "guideCare.gauge": "Keep your face out of line with the valve.",
  "guideCare.rotor": "A hot rotor burns, and its edge cuts. Never touch a rotor that turns. Leave the lever alone while the wheel is out.",
  "guideCare.runout": "Fingers clear of spokes and rotor while anything turns. Turn by hand, never with the cranks. A hot rotor burns.",

  // family: guideNote.
  "guideNote.width": "All three readings, the pressure, and how many days the tyre has been on.",
  "guideNote.inner": "The smallest reading, in millimetres. What is printed on the rim is as good.",
  "guideNote.load": "Both readings. The bike as it stood there.",
  "guideNote.gauge": "Both readings. Too high by 0.1 means that a tyre at 2.0 reads 2.1.",
  "guideNote.rotor": "The thinnest place, and the number on the rotor.",
  "guideNote.runout": "The difference, and which way: sideways or up and down.",

  // family: guideUse.
  "guideUse.width": "Pressure counts with it in place of a prediction that may be 1.5 mm off. With the frame’s opening it gives the clearance each side.",
  "guideUse.inner": "Pressure, the limits of hookless rims, and which widths fit the rim.",
  "guideUse.load": "Pressure for each wheel, in place of an assumed share.",
  "guideUse.gauge": "It is taken off every reading of that gauge.",
  "guideUse.rotor": "Below the number on the rotor: do not ride. The trend says when to order the next.",
  "guideUse.runout": "Rotor above 0.2 mm (from memory): it rubs. Rim above 0.8 mm, the limit in the test of finished bicycles: have it trued.",

  // family: guidePicture.
  "guidePicture.width": "A tyre on its rim, cut across. The caliper’s jaws just touch the tyre left and right where it is widest. Beside it the wheel with three places, a third of a turn apart.",
  "guidePicture.inner": "A rim without its tyre, cut across. The caliper’s inside jaws stand between the two upper edges; an arrow between them is the inner width. The outside of the rim is crossed out.",
  "guidePicture.load": "A bicycle with its rider seen from the side. The front wheel stands on a scale, the rear wheel on a block of the same height.",
  "guidePicture.gauge": "Two gauges go to the same valve, first yours, then the one you trust. Their needles show 2.1 and 2.",
  "guidePicture.rotor": "Left: a rotor with its track, the ring where the pads rub, and the minimum thickness stamped on it. Right: the rotor cut across; the pointed jaws sit in the worn track, not on the outer edge, which is still thick.",
  "guidePicture.runout": "The same pointer, tied to the fork leg, beside the rim at two moments of one turn: once the gap is narrowest, once widest.",

  "guideMark.width": "width",
  "guideMark.inner": "inner width",
  "guideMark.notOutside": "not outside",
  "guideMark.level": "level",
  "guideMark.block": "block",
  "guideMark.scale": "scale",
  "guideMark.mine": "yours",
  "guideMark.theirs": "trusted",
  "guideMark.sameTyre": "same tyre",
  "guideMark.min": "MIN 1.5",
  "guideMark.track": "track",
  "guideMark.cut": "cut across",
  "guideMark.here": "here",
  "guideMark.notEdge": "not the edge",
  "guideMark.leg": "fork leg",
  "guideMark.narrowest": "narrowest gap",
  "guideMark.widest": "widest gap",
  "guideMark.runout": "widest − narrowest = run-out",
} as const;
