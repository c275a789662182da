// The phone's ear: hears when something is plucked, and hands over what followed. Nothing of it is kept.

export interface Listener {
  level(share: number): void; // how loud it is, 0 to 1
  pluck(samples: readonly number[], rate: number): void;
}

const size = 32768; // samples: the most that an analyser holds, 0.7 s at the usual rates
const tick = 50; // ms between two looks
const before = 0.08; // s of what went before the pluck that are kept
const louder = 4; // times the quiet: something was plucked
const leap = 3; // times the last look: something was plucked while another still rang
const faintest = 0.003; // of full scale, below which nothing counts
const parts = 1e4; // steps of a sample that are handed over

export class Ear {
  readonly #stream: MediaStream;
  readonly #context: AudioContext;
  readonly #analyser: AnalyserNode;
  readonly #listener: Listener;
  readonly #wave = new Float32Array(size);
  readonly #timer: ReturnType<typeof setInterval>;
  #quiet = faintest; // loudness of the place
  #last = 0;
  #since: number | undefined; // when the pluck came, s of the context
  #deaf = false; // until what was plucked has died away

  // open asks for the microphone, at the tap that the browser wants to see. It rejects when that is refused or there is none.
  static async open(listener: Listener): Promise<Ear> {
    const stream = await navigator.mediaDevices.getUserMedia({ audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false } });
    const context = new AudioContext();
    await context.resume();
    return new Ear(stream, context, listener);
  }

  private constructor(stream: MediaStream, context: AudioContext, listener: Listener) {
    this.#stream = stream;
    this.#context = context;
    this.#listener = listener;
    this.#analyser = new AnalyserNode(context, { fftSize: size });
    const mute = new GainNode(context, { gain: 0 }); // some browsers listen only to what is played
    context.createMediaStreamSource(stream).connect(this.#analyser).connect(mute).connect(context.destination);
    this.#timer = setInterval(() => this.#look(), tick);
  }

  close(): void {
    clearInterval(this.#timer);
    for (const track of this.#stream.getTracks()) track.stop();
    void this.#context.close();
  }

  #look(): void {
    const { currentTime: now, sampleRate: rate } = this.#context;
    this.#analyser.getFloatTimeDomainData(this.#wave);
    const loud = loudness(this.#wave.subarray(size - Math.round((rate * tick) / 1000)));
    this.#listener.level(Math.min(1, 3 * loud));
    const plucked = loud > Math.max(faintest, louder * this.#quiet) && loud > leap * this.#last;
    if (this.#since === undefined && plucked && (!this.#deaf || loud > leap * this.#last)) this.#since = now;
    else if (this.#since !== undefined && now - this.#since > size / rate - before) {
      this.#since = undefined;
      this.#deaf = true;
      this.#listener.pluck(handed(this.#wave), rate);
    }
    if (this.#since === undefined) {
      this.#quiet = Math.max(faintest / louder, loud < this.#quiet ? loud : this.#quiet + 0.02 * (loud - this.#quiet));
      if (loud < 2 * this.#quiet) this.#deaf = false;
    }
    this.#last = Math.max(loud, this.#last * 0.5);
  }
}

function loudness(wave: Float32Array): number {
  let sum = 0;
  for (const x of wave) sum += x * x;
  return Math.sqrt(sum / Math.max(1, wave.length));
}

// handed brings a wave to full height, so that few digits tell it.
function handed(wave: Float32Array): readonly number[] {
  let most = 1e-9;
  for (const x of wave) most = Math.max(most, Math.abs(x));
  return Array.from(wave, (x) => Math.round((x / most) * parts) / parts);
}
