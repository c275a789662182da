// Reads a course file as a stream, giving the page time to breathe between its pieces.

import { GpxError, GpxReader, mostBytes } from "./gpx.ts";
import type { Points } from "./points.ts";

const piece = 64 * 1024; // bytes; a few milliseconds of a slow phone
const spell = 16; // ms of work before the page is let in again

// readCourse rejects with a GpxError. Progress is a share of the file; a signal that is aborted ends it without a word.
export async function readCourse(file: Blob, progress: (share: number) => void, closed: AbortSignal): Promise<Points> {
  if (file.size > mostBytes) throw new GpxError("size");
  const [reader, decoder] = [new GpxReader(), new TextDecoder()];
  let since = performance.now();
  for (let from = 0; from < file.size; ) {
    const bytes = new Uint8Array(await file.slice(from, from + 16 * piece).arrayBuffer());
    for (let at = 0; at < bytes.length; at += piece) {
      reader.feed(decoder.decode(bytes.subarray(at, at + piece), { stream: true }));
      if (performance.now() - since < spell) continue;
      progress((from + at) / file.size);
      await breath();
      closed.throwIfAborted();
      since = performance.now();
    }
    from += bytes.length;
  }
  reader.feed(decoder.decode());
  await breath();
  return reader.end();
}

// breath lets the page draw and answer. A message comes back sooner than the least timer.
function breath(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(0);
  });
}
