import type { Hertz, Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import { random } from '../blocks/random.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { loopSpan, type Span } from '../blocks/span.js';
import { checkKnobs } from '../knob.js';
import type { StillSource } from '../sound-kind.js';
import { raisedCosine } from '../../numeric/raised-cosine.js';
import { addBurst } from './burst.js';
import { outdoors } from './outdoors.js';
import { SQUEAL_KNOBS, type Squeal } from './squeal.js';
import { SQUEAL_KIND } from './squeal-kind.js';
import { addWheel } from './squeal-wheel.js';
import { speedAt, STOP, TOUCH, turnsAt } from './braking.js';
import { partialSum } from './partial-sum.js';
import { slowCurve } from '../blocks/slow-curve.js';
import { cast, strike } from './struck-metal.js';

const LOOP: Seconds = 7.5;
const WHEELS = 3;
const CEILING = 0.45;
const LEVEL = 0.1;

/**
 * Brake blocks on wheels that come to a stand: rubbing noise that turns with the wheels, and stick-slip tones of three
 * wheels, each of which jumps between its modes, wanders within them and flickers; near the end a groan that falls,
 * then the jolt of the stop and silence. The loop begins and ends in silence.
 */
export const SQUEAL_SOURCE: StillSource<Squeal> = {
  ...SQUEAL_KIND,
  render(squeal: Squeal, sampleRate: Hertz) {
    checkKnobs(SQUEAL_KNOBS, squeal);
    validSampleRate(sampleRate);
    const span = loopSpan(Math.round(LOOP * sampleRate), sampleRate, squeal.seed);
    const sound = rubbing(squeal, span);
    for (let wheel = 0; wheel < WHEELS; wheel++) addWheel(sound, squeal, wheel, span);
    addGroan(sound, squeal, span);
    addJolt(sound, squeal, span);
    return outdoors(sound, span).map((x) => LEVEL * x);
  }
};

/** Noise of the blocks: broad, brighter while it is fast, swinging once with each turn of the wheel. */
function rubbing({ roughness, seed }: Squeal, span: Span): Float32Array {
  const { sampleRate } = span;
  const low = filter(span.noise(1), section('bandPass', 550, 0.5, sampleRate), span, 1);
  filter(span.noise(2), section('bandPass', 1300, 0.6, sampleRate), span, 0.7, low);
  const high = filter(span.noise(3), section('bandPass', 3600, 0.4, sampleRate), span, 0.9);
  const phase = 2 * Math.PI * random(seed ^ 0x3a).uniform();
  const level = slowCurve(span, (_, t) => {
    const turned = 2 * Math.PI * turnsAt(t);
    const swing = 1 + 0.35 * Math.sin(turned + phase) + 0.15 * Math.sin(2 * turned);
    return (
      (0.6 + 0.8 * roughness) * raisedCosine((t - TOUCH) / 0.5) * raisedCosine((STOP - t) / 0.25) * swing
    );
  });
  const slow = slowCurve(span, (_, t) => 0.5 * speedAt(t) ** 0.4);
  const fast = slowCurve(span, (_, t) => 0.35 * speedAt(t));
  return Float32Array.from(level, (size, i) => size * (slow[i] * low[i] + fast[i] * high[i]));
}

/** The last half second: stick and slip so slow that it growls, falling to the stop. */
function addGroan(sound: Float32Array, { pitch, roughness }: Squeal, span: Span): void {
  const { sampleRate } = span;
  const rough = filter(span.noise(10), section('lowPass', 60, 0.7, sampleRate), span, 1 / 0.0527);
  const from = STOP - 0.75;
  const start = 190 + 0.06 * pitch;
  const sizes = Array.from({ length: 9 }, (_, n) => (n + 1) ** -0.9).filter(
    (_, n) => (n + 1) * start * 1.1 < CEILING * sampleRate
  );
  let phase = 0;
  for (let i = Math.ceil(from * sampleRate); i < STOP * sampleRate; i++) {
    const t = i / sampleRate;
    const x = (t - from) / (STOP - from);
    const frequency = start * (1 - 0.45 * x) * (1 + 0.02 * (0.3 + roughness) * rough[i]);
    phase += (2 * Math.PI * frequency) / sampleRate;
    const size = 0.55 * raisedCosine(x / 0.5) * raisedCosine((1 - x) / 0.08) * (1 + 0.35 * rough[i]);
    sound[i] += size * partialSum(phase, sizes);
  }
}

/** The train rocks back: a dull thump and a clank. */
function addJolt(sound: Float32Array, { seed }: Squeal, span: Span): void {
  const pattern = [
    { name: 'frame', ratio: 1, decay: 1, level: 1 },
    { name: 'brake rigging', ratio: 4.7, decay: 0.6, level: 0.3 },
    { name: 'brake rigging', ratio: 11.3, decay: 0.5, level: 0.2 }
  ];
  for (const [time, strength] of [
    [STOP + 0.02, 0.7],
    [STOP + 0.31, 0.35]
  ]) {
    const at = time * span.sampleRate;
    strike(sound, span, cast(pattern, 92, 0.25, 0.04, seed ^ 0x10), at, strength, 900, random(seed + 77));
    addBurst(
      sound,
      span,
      filter(span.noise(1), section('lowPass', 1400, 0.6, span.sampleRate), span),
      at,
      0.002,
      0.015,
      strength
    );
  }
}
