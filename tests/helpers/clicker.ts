import { addPulse } from '../../src/lib/sounds/blocks/pulse.js';
import type { SoundKnobs } from '../../src/lib/sounds/knob.js';
import { along, pulsesOf } from '../../src/lib/sounds/motion/course.js';
import type { MovingSource } from '../../src/lib/sounds/sound-kind.js';

export interface Clicker {
  notch: number;
  seed: number;
}

const KNOBS = {
  notch: { type: 'number', name: 'notch', unit: 'notch', min: 0, max: 8, step: 1, usual: 4 },
  seed: { type: 'number', name: 'seed', unit: 'seed', min: 0, max: 9999, step: 1, usual: 1, whole: true }
} as const satisfies SoundKnobs;

/** The plainest machine there is: four clicks a turn, the first of them the strongest; it stands at notch 0. */
export const CLICKER: MovingSource<Clicker> = {
  knobs: KNOBS,
  target: ({ notch }) => ({ speed: 1.3 * notch, effort: notch / 8 }),
  dynamics: () => ({
    range: 10.4,
    rise: 2,
    fall: 1.5,
    answer: 0.2,
    loading: Infinity,
    spoolUp: 0.8,
    spoolDown: 0.5
  }),
  patternTurns: () => 1,
  marks: ({ notch }) => [{ frequency: 5.2 * notch, name: 'click', harmonics: 3 }],
  render: (_, course, span) => {
    const sound = span.noise(1).map((x) => 0.001 * x);
    for (const { at, number } of pulsesOf(course, 4))
      addPulse(
        sound,
        span,
        at,
        0.0005 * span.sampleRate,
        (number % 4 === 0 ? 1 : 0.5) * (0.5 + along(course, course.effort, at))
      );
    return sound;
  }
};
