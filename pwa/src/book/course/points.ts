// The points of a course as they come out of a file: how far along each lies, and how high.

const earth = 6371008.8; // m, mean radius (IUGG)
const radian = Math.PI / 180;

export class Points {
  count = 0;
  readonly #far: Float64Array[] = []; // m along, in pages, so that nothing large is ever copied
  readonly #high: Float64Array[] = []; // m; NaN where the file tells none
  #length = 0;
  #lat = NaN;
  #lon = NaN;

  // part begins another part: the way from the last point to the next is not ridden.
  part(): void {
    this.#lat = NaN;
  }

  add(lat: number, lon: number, height: number): void {
    if (!Number.isNaN(this.#lat)) this.#length += between(this.#lat, this.#lon, lat, lon);
    [this.#lat, this.#lon] = [lat, lon];
    const [page, place] = [this.count >> 12, this.count & 4095];
    if (place === 0) {
      this.#far.push(new Float64Array(4096));
      this.#high.push(new Float64Array(4096));
    }
    const [far, high] = [this.#far[page], this.#high[page]];
    if (far !== undefined && high !== undefined) [far[place], high[place]] = [this.#length, height];
    this.count++;
  }

  // length is that of all parts, m.
  get length(): number {
    return this.#length;
  }

  far(n: number): number {
    return this.#far[n >> 12]?.[n & 4095] ?? NaN;
  }

  high(n: number): number {
    return this.#high[n >> 12]?.[n & 4095] ?? NaN;
  }
}

// between is the way along a great circle (the haversine formula).
function between(lat1: number, lon1: number, lat2: number, lon2: number): number {
  const a = Math.sin(((lat2 - lat1) * radian) / 2);
  const b = Math.sin(((lon2 - lon1) * radian) / 2);
  const h = a * a + Math.cos(lat1 * radian) * Math.cos(lat2 * radian) * b * b;
  return 2 * earth * Math.asin(Math.min(1, Math.sqrt(h)));
}
