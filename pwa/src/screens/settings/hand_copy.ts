// A copy of the whole book on its way out, which the book remembers.

import type { BookLog } from "../../log/book_log.ts";
import { type Handed, handOver } from "../../ui/hand_over.ts";

export async function handCopy(book: BookLog): Promise<{ readonly handed: Handed; readonly name: string }> {
  const file = await book.exportFile();
  const handed = await handOver(file);
  if (handed !== "kept") await book.noteCopied();
  return { handed, name: file.name };
}
