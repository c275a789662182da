// Deadlines by progress: a weak network is slow, and not broken as long as something moves. What ends a request is a time
// in which nothing came at all.

export type Patience = number; // ms

export interface Answer {
  readonly response: Response;
  readonly body: Uint8Array<ArrayBuffer>;
}

// inTime asks, and reads the whole answer. Patience is for its beginning, and then for each next piece.
export async function inTime(ask: (signal: AbortSignal) => Promise<Response>, patience: Patience): Promise<Answer> {
  const giveUp = new AbortController();
  const end = (): void => giveUp.abort(new DOMException("nothing came in time", "TimeoutError"));
  let timer = setTimeout(end, patience);
  const moved = (): void => {
    clearTimeout(timer);
    timer = setTimeout(end, patience);
  };
  try {
    const response = await ask(giveUp.signal);
    moved();
    return { response, body: await wholeOf(response, moved) };
  } finally {
    clearTimeout(timer);
  }
}

async function wholeOf(response: Response, moved: () => void): Promise<Uint8Array<ArrayBuffer>> {
  const pieces: BlobPart[] = [];
  const reader = response.body?.getReader();
  for (let read = await reader?.read(); read !== undefined && !read.done; read = await reader?.read()) {
    pieces.push(read.value as Uint8Array<ArrayBuffer>);
    moved();
  }
  return new Uint8Array(await new Blob(pieces).arrayBuffer());
}
