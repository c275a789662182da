// SHA-256 (FIPS 180-4). The browser has its own, but answers later, never inside a database transaction, and over plain
// http not at all; the digest of a book is needed in all three. What can wait, and may be long, goes to the browser's where there is
// one: that works beside the page.

// The first 32 bits of the fractional parts of the cube roots of the first 64 primes (4.2.2).
const rounds = Uint32Array.of(
  0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
  0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
  0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
  0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
  0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
  0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
  0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
  0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
);

// The same of the square roots of the first 8 primes (5.3.3).
const start = [
  0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19,
] as const;

// sha256 gives the hash as eight words.
export function sha256(message: Uint8Array): Uint32Array {
  const hash = Uint32Array.from(start);
  const schedule = new Uint32Array(64);
  const padded = pad(message);
  for (let offset = 0; offset < padded.byteLength; offset += 64) {
    for (let i = 0; i < 16; i++) schedule[i] = padded.getUint32(offset + 4 * i);
    compress(hash, schedule);
  }
  return hash;
}

// laterHex gives the hash as lowercase hex digits, by the browser's own code where it has some.
export async function laterHex(message: Uint8Array<ArrayBuffer>): Promise<string> {
  return Array.from(await later(message), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

// later gives the hash as 32 bytes.
export async function later(message: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  const { subtle } = crypto as Partial<Crypto>;
  if (subtle !== undefined) return new Uint8Array(await subtle.digest("SHA-256", message));
  const bytes = new DataView(new ArrayBuffer(32));
  sha256(message).forEach((word, i) => bytes.setUint32(4 * i, word));
  return new Uint8Array(bytes.buffer);
}

// hex writes words as lowercase hex digits.
export function hex(words: Uint32Array): string {
  return Array.from(words, (word) => word.toString(16).padStart(8, "0")).join("");
}

// pad adds a one bit, zeros, and the length in bits as 64 (5.1.1).
function pad(message: Uint8Array): DataView {
  const padded = new Uint8Array(Math.ceil((message.length + 9) / 64) * 64);
  padded.set(message);
  padded[message.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(message.length / 2 ** 29));
  view.setUint32(padded.length - 4, message.length << 3);
  return view;
}

const turn = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

// compress works one block into the hash (6.2.2).
function compress(hash: Uint32Array, schedule: Uint32Array): void {
  for (let i = 16; i < 64; i++) {
    const [early, late] = [schedule[i - 15] as number, schedule[i - 2] as number];
    const s0 = turn(early, 7) ^ turn(early, 18) ^ (early >>> 3);
    const s1 = turn(late, 17) ^ turn(late, 19) ^ (late >>> 10);
    schedule[i] = ((schedule[i - 16] as number) + s0 + (schedule[i - 7] as number) + s1) | 0;
  }
  let [a, b, c, d, e, f, g, h] = hash as unknown as [number, number, number, number, number, number, number, number];
  for (let i = 0; i < 64; i++) {
    const choose = (e & f) ^ (~e & g);
    const t1 = (h + (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) + choose + (rounds[i] as number) + (schedule[i] as number)) | 0;
    const t2 = ((turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + t2) | 0;
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => (hash[i] = (hash[i] as number) + word));
}
