import { equal, test } from "../../ui/testing.ts";
import { difference, emptyDigest, toggled } from "./digest.ts";
import { chance, hexId, shuffled } from "../db/kit.test.ts";
import { hex, sha256 } from "./sha256.ts";

test("sha256: the standard's examples", () => {
  const of = (text: string): string => hex(sha256(new TextEncoder().encode(text)));
  // FIPS 180-2, appendix B.1 and B.2.
  equal(of("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  equal(of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"), "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
});

test("sha256: as the browser's own, at every length round a block's end", async () => {
  for (const length of [0, 1, 31, 32, 55, 56, 63, 64, 65, 119, 120, 128, 70_000]) {
    const message = Uint8Array.from({ length }, (_, i) => i * 7 + length);
    const want = new DataView(await crypto.subtle.digest("SHA-256", message));
    equal([...sha256(message)], Array.from({ length: 8 }, (_, i) => want.getUint32(4 * i)), `${length} bytes`);
  }
});

test("digest: the same in any order, undone by the same id, and as the server's", () => {
  const random = chance(7);
  const ids = Array.from({ length: 40 }, () => hexId(random));
  const all = toggled(emptyDigest, ids);
  equal(toggled(toggled(emptyDigest, shuffled(random, ids).slice(0, 13)), []).length, 64);
  equal(toggled(emptyDigest, shuffled(random, ids)), all);
  equal(toggled(all, ids.slice(1)), toggled(emptyDigest, ids.slice(0, 1)));
  equal(difference(all, toggled(emptyDigest, ids.slice(3))), toggled(emptyDigest, ids.slice(0, 3)));
  equal(toggled(emptyDigest, ["a".repeat(32)]), hex(sha256(new TextEncoder().encode("a".repeat(32)))));
});
