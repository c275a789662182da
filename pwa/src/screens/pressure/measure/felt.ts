// What the phone feels: its motion with gravity, and its speed where its owner lets the page ask.

export type Sample = readonly [ms: number, x: number, y: number, z: number];
export type Speed = readonly [ms: number, kmh: number];

interface Asks {
  requestPermission?(): Promise<"granted" | "denied">;
}

// allowed asks for the motion sensors where the phone wants to be asked. It must run at a tap.
export async function allowed(): Promise<boolean> {
  const asks = (globalThis as { readonly DeviceMotionEvent?: Asks }).DeviceMotionEvent;
  if (asks === undefined) return false;
  return asks.requestPermission === undefined || (await asks.requestPermission().catch(() => "denied")) === "granted";
}

const most = 6000; // samples; as many as the calculation takes

// Felt gathers while it is on.
export class Felt {
  samples: Sample[] = [];
  level = 0; // m/s2, of late
  any = false; // something was ever felt
  #keeps = false;

  constructor(off: AbortSignal) {
    addEventListener("devicemotion", (event) => this.#take(event), { signal: off });
  }

  // keep begins the record.
  keep(): void {
    this.samples = [];
    this.#keeps = true;
  }

  #take({ accelerationIncludingGravity: a, timeStamp }: DeviceMotionEvent): void {
    if (a === null || a.x === null || a.y === null || a.z === null) return;
    this.any = true;
    this.level = 0.9 * this.level + 0.1 * Math.abs(Math.hypot(a.x, a.y, a.z) - 9.81);
    if (this.#keeps && this.samples.length < most) this.samples.push([Math.round(timeStamp * 10) / 10, a.x, a.y, a.z]);
  }
}

// Speeds follows the phone's speed from its own tap on.
export class Speeds {
  readonly list: Speed[] = [];
  readonly #heard: (kmh: number | undefined) => void;

  constructor(heard: (kmh: number | undefined) => void, off: AbortSignal) {
    this.#heard = heard;
    const { geolocation } = navigator as { readonly geolocation?: Geolocation };
    const watch = geolocation?.watchPosition(({ coords }) => this.#take(coords.speed), () => heard(undefined), { enableHighAccuracy: true, maximumAge: 0 });
    if (watch === undefined) heard(undefined);
    else off.addEventListener("abort", () => geolocation?.clearWatch(watch));
  }

  #take(speed: number | null): void {
    if (speed === null) return;
    this.list.push([Math.round(performance.now()), speed * 3.6]);
    this.#heard(speed * 3.6);
  }
}

export function csvOf(samples: readonly Sample[], speeds: readonly Speed[]): string {
  const lines = [...samples.map((each) => each.join(",") + ","), ...speeds.map(([ms, kmh]) => `${ms},,,,${kmh.toFixed(1)}`)];
  return `t_ms,x_ms2,y_ms2,z_ms2,speed_kmh\n${lines.join("\n")}\n`;
}
