import { ALERT_NOTES, type Heard } from './heard.ts';

/** How fast a sound that goes on follows [s]: without a click. */
const FOLLOW = 0.06;
const TONE_GAIN = 0.06;
const ALERT_GAIN = 0.22;
const NOISE_SECONDS = 2;

/** The sounds of a descent, made on the spot: noise for the engine, the contact and the crushing, plain tones for margin and alerts. */
export class SoundBoard {
  readonly #context = new AudioContext();
  readonly #out = new GainNode(this.#context, { gain: 0 });
  readonly #noise = noiseIn(this.#context);
  readonly #engine = new GainNode(this.#context, { gain: 0 });
  readonly #filter = new BiquadFilterNode(this.#context, { type: 'lowpass', frequency: 90, Q: 0.4 });
  readonly #tone = new OscillatorNode(this.#context, { type: 'sine' });
  readonly #toneGain = new GainNode(this.#context, { gain: 0 });

  constructor() {
    this.#loop().connect(this.#filter).connect(this.#engine).connect(this.#out);
    this.#tone.connect(this.#toneGain).connect(this.#out);
    this.#tone.start();
    this.#out.connect(this.#context.destination);
  }

  /** `volume` from 0 to 1. A browser lets nothing sound before somebody has pressed something. */
  play({ engine, tone, isContact, crush, alert }: Heard, volume: number): void {
    if (this.#context.state === 'suspended') void this.#context.resume();
    follow(this.#out.gain, volume, this.#context);
    follow(this.#engine.gain, engine.gain, this.#context);
    follow(this.#filter.frequency, engine.cutoff, this.#context);
    if (tone !== undefined) follow(this.#tone.frequency, tone, this.#context);
    follow(this.#toneGain.gain, tone === undefined ? 0 : TONE_GAIN, this.#context);
    if (isContact) this.#burst({ kind: 'lowpass', frequency: 110, gain: 0.9, lasts: 0.5 });
    if (crush > 0) this.#burst({ kind: 'bandpass', frequency: 1400, gain: 0.15 + 0.35 * crush, lasts: 0.22 });
    for (const { tone: pitch, after, lasts } of alert === undefined ? [] : ALERT_NOTES[alert]) {
      const voice = new OscillatorNode(this.#context, { type: 'triangle', frequency: pitch });
      this.#once(voice, { gain: ALERT_GAIN, rise: 0.03, after, lasts });
    }
  }

  end(): void {
    void this.#context.close();
  }

  #loop(): AudioBufferSourceNode {
    const source = new AudioBufferSourceNode(this.#context, { buffer: this.#noise, loop: true });
    source.start();
    return source;
  }

  /** A short noise that dies away. */
  #burst(sound: {
    readonly kind: BiquadFilterType;
    readonly frequency: number;
    readonly gain: number;
    readonly lasts: number;
  }): void {
    const { kind, frequency, gain, lasts } = sound;
    const source = new AudioBufferSourceNode(this.#context, { buffer: this.#noise, loop: true });
    const filter = new BiquadFilterNode(this.#context, { type: kind, frequency });
    this.#once(source, { gain, rise: 0.008, after: 0, lasts }, filter);
  }

  #once(
    source: AudioScheduledSourceNode,
    { gain, rise, after, lasts }: { readonly gain: number; readonly rise: number; after: number; lasts: number },
    through: AudioNode = source,
  ): void {
    const begin = this.#context.currentTime + after;
    const shape = new GainNode(this.#context, { gain: 0 });
    shape.gain.setValueAtTime(0, begin);
    shape.gain.linearRampToValueAtTime(gain, begin + rise);
    shape.gain.linearRampToValueAtTime(0, begin + lasts);
    if (through !== source) source.connect(through);
    through.connect(shape).connect(this.#out);
    source.start(begin);
    source.stop(begin + lasts);
    source.addEventListener('ended', () => shape.disconnect());
  }
}

function follow(param: AudioParam, value: number, { currentTime }: BaseAudioContext): void {
  param.setTargetAtTime(value, currentTime, FOLLOW);
}

/** Noise of all pitches alike; the same each time. */
function noiseIn(context: BaseAudioContext): AudioBuffer {
  const buffer = context.createBuffer(1, NOISE_SECONDS * context.sampleRate, context.sampleRate);
  const samples = buffer.getChannelData(0);
  let state = 1;
  for (let i = 0; i < samples.length; i++) {
    // a linear congruential generator modulo 2^31 - 1 (Lewis, Goodman and Miller 1969)
    state = (state * 16_807) % 2_147_483_647;
    samples[i] = (2 * state) / 2_147_483_647 - 1;
  }
  return buffer;
}
