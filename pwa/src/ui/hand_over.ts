// Hands a file to the person: through the phone's share sheet where it takes the file, else as a download.

import { el } from "./el.ts";

export type Handed = "shared" | "saved" | "kept"; // kept: the person thought better of it

export async function handOver(file: File): Promise<Handed> {
  if (sharable(file)) {
    try {
      await navigator.share({ files: [file] });
      return "shared";
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") return "kept";
      // The sheet may not open, for instance when the press was too long ago: then it is a download.
    }
  }
  download(file);
  return "saved";
}

function sharable(file: File): boolean {
  return "canShare" in navigator && navigator.canShare({ files: [file] });
}

const read = 60_000; // ms: by then the browser has taken the file over

function download(file: File): void {
  const url = URL.createObjectURL(file);
  el("a", { href: url, download: file.name }).click();
  setTimeout(() => URL.revokeObjectURL(url), read);
}
