import type { Hertz } from '../../units.js';
import { section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';

export interface Resonance {
  frequency: Hertz;
  q: number;
  gain: number;
}

/** What is left of any of them after this time cannot be heard, in seconds. */
const SETTLING = 0.5;

/**
 * Adds to `sum` what a signal sets ringing in resonances that stand side by side: the band-pass sections of
 * blocks/filter.ts, four at a time, which takes a third of the time that one after the other takes. In a loop they are
 * in their steady state, otherwise they start from rest. What lies above 0.45 of the sample rate is left out.
 */
export function addResonances(
  signal: Float32Array,
  resonances: readonly Resonance[],
  { sampleRate, cyclic }: Pick<Span, 'sampleRate' | 'cyclic'>,
  sum: Float32Array
): void {
  const sections = resonances
    .filter(({ frequency }) => frequency < 0.45 * sampleRate)
    .map(({ frequency, q, gain }) => {
      const { b0, a1, a2 } = section('bandPass', frequency, q, sampleRate);
      return { b: gain * b0, a1, a2 };
    });
  const none = { b: 0, a1: 0, a2: 0 };
  const length = signal.length;
  // A loop is first run unheard for as long as they take to settle: the end of it, or several times all of it.
  const before = cyclic ? Math.round(SETTLING * sampleRate) : 0;
  const whole = Array.from({ length: Math.floor(before / length) }, () => 0);
  const rounds = [length - (before % length), ...whole].map((from) => ({ from, heard: 0 }));
  rounds.push({ from: 0, heard: 1 });
  for (let n = 0; n < sections.length; n += 4) {
    const [p, q = none, r = none, s = none] = sections.slice(n, n + 4);
    const [pb, pa, pz] = [p.b, p.a1, p.a2];
    const [qb, qa, qz] = [q.b, q.a1, q.a2];
    const [rb, ra, rz] = [r.b, r.a1, r.a2];
    const [sb, sa, sz] = [s.b, s.a1, s.a2];
    let [x1, x2, p1, p2, q1, q2, r1, r2, s1, s2] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
    for (const { from, heard } of rounds) {
      for (let i = from; i < length; i++) {
        const x = signal[i];
        const change = x - x2;
        const p0 = pb * change - pa * p1 - pz * p2;
        const q0 = qb * change - qa * q1 - qz * q2;
        const r0 = rb * change - ra * r1 - rz * r2;
        const s0 = sb * change - sa * s1 - sz * s2;
        x2 = x1;
        x1 = x;
        p2 = p1;
        p1 = p0;
        q2 = q1;
        q1 = q0;
        r2 = r1;
        r1 = r0;
        s2 = s1;
        s1 = s0;
        sum[i] += heard * (p0 + q0 + r0 + s0);
      }
    }
  }
}
