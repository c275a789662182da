// The words of the page of sources, and of erasing what is on this phone.

export const sourceWords = {
  "sources.title": "Sources",
  "sources.way": "Sources: every constant and formula",
  "sources.intro": "What the sums rest on. Numbers and formulas are read from the calculator itself, so they are the ones in use.",
  "sources.none": "The calculator does not answer, so it cannot tell its sources. Reload the page, or come back with signal.",
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

  "erase.title": "Erase everything here",
  "erase.intro": "This takes this book off this phone: bikes, wheels, readings, notes, photos, what is half typed, and the settings. It cannot be undone.",
  "erase.stays": "The book on servers and on other phones stays as it is. If this phone meets its server again, it fetches the book anew. To take one thing away everywhere, erase it under “Everything in the book” instead.",
  "erase.holds": "This phone holds {n} entries of this book.",
  "erase.empty": "This phone holds no entries of this book.",
  "erase.unsent": "{n} of them are not on the server that this phone met last. They will be lost unless you save a copy.",
  "erase.never": "This phone has never met a server: what is erased here is gone unless you save a copy.",
  "erase.sent": "The server last met has all of them.",
  "erase.copy": "Save a copy first",
  "erase.saved": "The copy is saved as {name}.",
  "erase.shared": "The copy is handed on.",
  "erase.kept": "No copy was saved.",
  "erase.word": "ERASE",
  "erase.type": "To erase, type {word}",
  "erase.button": "Erase everything on this phone",
  "erase.wrong": "Type {word} in the field first. Nothing was erased.",
  "erase.busy": "Erasing…",
  "erase.open": "Rimside is open in another tab that does not let go. Close it, then press again. Nothing was erased.",
} as const;
