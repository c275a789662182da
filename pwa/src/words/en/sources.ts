// The words of the page of sources.

export const sourceWords = {
  "sources.title": "Sources",
  "sources.way": "Sources: every constant and formula",
  "sources.intro": "What the sums rest on. Numbers are taken from the calculator itself, so they are the ones in use.",
  "sources.count": "{n} of {total}",
  "sources.usedBy": "for {list}",
  // family: sources.mark.
  "sources.mark.published": "Published",
  "sources.mark.practice": "Common practice",
  "sources.mark.memory": "From memory",
  "sources.mark.ours": "Our choice",
  // family: sources.means.
  "sources.means.published": "a named source prints it",
  "sources.means.practice": "the trade does so, nobody prints it",
  "sources.means.memory": "still to be confirmed by a source",
  "sources.means.ours": "chosen here, for the reason given",
  // family: sources.for.
  "sources.for.pressure": "pressure",
  "sources.for.air": "air",
  "sources.for.leak": "leak",
  "sources.for.expected": "what to expect on the gauge",
  "sources.for.shift": "what notes after rides teach",
  "sources.for.co2": "CO2",
  "sources.for.pump": "pump",
  "sources.for.fit": "mounting a tyre",
  "sources.for.seat": "seating a bead",
  "sources.for.match": "which spare fits",
  "sources.for.cover": "which wheels to take along",
  "sources.for.share": "one pressure for several riders",
  "sources.for.pack": "packing",
  "sources.for.salt": "sweat since last wash",
  "sources.for.ready": "may it be ridden",
  "sources.for.checks": "checks",
  "sources.for.due": "what is due",
} as const;
