import type { MountKind } from '../../acoustics/mounts/mount.js';
import type { Decibels, Hertz } from '../../units.js';

/** A third-octave band in which the two models say most different things of a mount of the demo bench. */
export interface Disagreement {
  kind: MountKind;
  /** The nominal frequency of the band. */
  around: Hertz;
  /** Mean level over the band, against the speaker's mid band in an endless plate. */
  ruleDb: Decibels;
  waveDb: Decibels;
  /** Why, in plain words. */
  reason: string;
}

/**
 * For every mount of the demo bench the third-octave band, 100 Hz to 8 kHz, in which the wave solution is furthest above
 * the rule of thumb, and the one in which it is furthest below, where that is 2 dB or more. Bands, since that is
 * about what an ear takes together: a dip narrower than one is hardly heard. Straight in front, far away, `full`. A test
 * computes all of it again.
 */
export const DISAGREEMENTS: readonly Disagreement[] = [
  {
    kind: 'free',
    around: 6300,
    ruleDb: -2.6,
    waveDb: 4.9,
    reason:
      'The frame is a plate, if a small one: what comes round its rim set out upside down and arrives nearly half a wave late, which puts it in step with the cone’s own wave: they add up. The rule knows only that they cancel on low notes.'
  },
  {
    kind: 'plate',
    around: 2000,
    ruleDb: -1.3,
    waveDb: 7.5,
    reason: 'The same, further down: the way to the rim of the plate is nearly half a wave here.'
  },
  {
    kind: 'plate',
    around: 5000,
    ruleDb: -0.2,
    waveDb: -4.9,
    reason: 'Here the way to the rim is nearly a whole wave, and what comes from there cancels.'
  },
  {
    kind: 'shell',
    around: 1600,
    ruleDb: -2.5,
    waveDb: 9.7,
    reason:
      'The shell rings: it is a pipe a quarter of a wave deep, and what it blows out at its open bottom reaches you in step with the cone’s own wave.'
  },
  {
    kind: 'shell',
    around: 2500,
    ruleDb: -1.2,
    waveDb: -5.7,
    reason:
      'Above its ring the opening blows together with the cone, but a wall lower: nearly half a wave late, so that it cancels.'
  },
  {
    kind: 'box',
    around: 8000,
    ruleDb: -0.6,
    waveDb: 2.1,
    reason:
      'The rule has a smooth step from sound all round to sound in front only. The edges of the front send some of it back, here in step with the cone’s own wave.'
  }
];
