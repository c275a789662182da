// How this phone stands with the server.

export const syncWords = {
  "sync.unsent": "{n} not yet on the server",
  "sync.held": { by: "n", one: "{n} erasure waits: see Settings", other: "{n} erasures wait: see Settings" },
  "sync.met": "last synced {when}",
  "sync.sending": "sending {done} of {total}",
  "sync.fetching": "fetching {done} of {total}",
  // family: sync.phase.
  "sync.phase.never": "This phone has not synced yet. Everything works without a server.",
  "sync.phase.even": "The server has all of it too.",
  "sync.phase.waiting": "The rest goes to the server by itself.",
  "sync.phase.sending": "The server is being told what is new here.",
  "sync.phase.fetching": "What is new is coming from the server.",
  // family: sync.fault.
  "sync.fault.damaged": "The server’s book is damaged. What is here is safe, and goes there once somebody restores a backup on the server.",
  "sync.fault.damaged_page": "What the server sent was damaged on its way, and was not taken. It is asked for again.",
  "sync.fault.full": "The server’s disk is full. What is here is safe, and goes there once somebody makes room on it.",
  "sync.fault.read_only": "The server may not write its book. What is here is safe, and goes there once somebody lets it write to its folder.",
  "sync.fault.busy": "The server’s book is in use by another program. What is here is safe, and goes there by itself.",
  "sync.fault.too_small": "Something between here and the server does not let through what is to be sent. What is here is safe.",
  "sync.fault.internal": "Something is wrong with the server. What is here is safe, and goes there once the server works again.",
  "sync.phase.unreachable": "The server is out of reach. Everything works without it.",
  "sync.phase.otherBook": "The server holds another book: nothing goes there.",
  "sync.phase.notPaired": "Not paired with this server: nothing is sent. Everything works, and goes there once you pair it under Phones.",
  "sync.phase.shutOut": "Shut out by this server: nothing is sent. What is here stays here, and you can save a copy of it.",
  "clock.ahead": "This phone’s clock is {by} ahead of the server’s. Set it right: new entries carry its time, and history tells it.",
  "clock.behind": "This phone’s clock is {by} behind the server’s. Set it right: new entries carry its time, and history tells it.",
  "span.minutes": "{n} min",
  "span.hours": "{n} h",
  "span.days": { by: "n", one: "{n} day", other: "{n} days" },
  "book.failed": "It did not work. Nothing was changed.",
  "book.back": "Way back",
} as const;
