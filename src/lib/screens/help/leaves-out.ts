import { ACCURACY } from '../../waves/mesh/accuracy.js';

/** Something the models do not know, with its size where it is known. */
export interface Gap {
  title: string;
  text: string;
}

export interface Gaps {
  /** Which model they concern. */
  title: string;
  gaps: readonly Gap[];
}

const { full, draft } = ACCURACY;

/** What is left out, the largest first of each. Details and sources stand in the project’s docs/models. */
export const LEAVES_OUT: readonly Gaps[] = [
  {
    title: 'The rule of thumb does not know',
    gaps: [
      {
        title: 'The hump of an open mount: up to 9 dB too low',
        text: 'Where a plate is two thirds of a wave to a whole wave wide, a real one is 6 to 8 dB louder than the endless plate, and ripples above. The rule of thumb stays below that line; at worst it reads 9 dB too low. The wave solution has hump and ripples. (Exact series for a small source on a disc: C. Flammer, Spheroidal Wave Functions, 1957; C. J. Bouwkamp, 1950.)'
      },
      {
        title: 'The ring of a shell: a peak of 5 to 21 dB',
        text: 'A shell with closed ends rings where it is a quarter of a wave deep: by 5 to 13 dB where it is flatter than wide, by 8 to 21 dB where it is up to twice as deep as wide. The rule marks the place, within 4 % of that of the wave solution, within 1.5 % where the shell is at least as deep as wide; its curve, its sound and its level figures do not have the peak. Those of the wave solution have.'
      },
      {
        title: 'A speaker near the open end of a shell: up to 10 dB too low',
        text: 'The rule takes the nearest edge for all of it, but only a part of the back wave leaves by that end. With the cone right at an open end it is 4 to 10 dB too low on low notes, 20 mm away from it up to 7 dB; with the smallest speakers up to 15 and 9 dB. In the middle of the roof, or with closed ends, it is right within 2.5 dB there.'
      },
      {
        title: 'Everywhere but straight in front',
        text: 'A speaker in the roof, seen from the side as on most layouts, sounds different. The wave solution has every angle and distance.'
      },
      {
        title: 'The edges of a box’s front, the standing waves inside it',
        text: 'A real box stands above the step from all-round to front-only sound, by about 3 dB with an oblong front, by up to 4.3 dB with a square one, by more at a standing wave inside. The wave solution has both.'
      },
      {
        title: 'Smaller misses',
        text: 'Plates that are rectangles: 0.3 dB with the speaker in the middle, 0.5 dB if they are three times as long as wide, 0.8 dB far off the middle, at low frequency. Shells: up to 2.5 dB there.'
      }
    ]
  },
  {
    title: 'The wave solution does not know',
    gaps: [
      {
        title: `What is above ${full.highest / 1000} kHz`,
        text: `It is solved to ${full.highest / 1000} kHz, as a draft to ${draft.highest / 1000} kHz, and lower for a very large mount; above, the mount’s last value is held.`
      },
      {
        title: `The last ${full.errorDb} dB`,
        text: `The level in front of the cone is that of a much finer computation within ${full.errorDb} dB, as a draft within ${draft.errorDb} dB. In sharp dips and on resonances, and from the side above 6 kHz, it misses more.`
      },
      {
        title: 'Whether it is right for folded shells',
        text: 'Round plates are checked against an exact solution. For shells there is none: they are checked against finer meshes and a second program, which solves the same equations. A second method is still to come, and no model was measured yet.'
      },
      {
        title: 'The thickness of walls',
        text: 'Walls are as thin as can be, and a box is as large outside as inside.'
      },
      {
        title: 'How soon a ring dies away',
        text: 'What is lost inside a shell is set at the mount, 0.3 % unless told. Friction at smooth walls alone takes about half of that in the shell of a full-width diesel, most of it in one half as wide; a shell full of weights and wires perhaps 1 to 3 %. That is an estimate.'
      },
      {
        title: 'The shape of the cone',
        text: 'It is flat, stiff and level with the wall; frame, magnet and basket are not in the way, but for the room they take in a box.'
      }
    ]
  },
  {
    title: 'Neither of them knows',
    gaps: [
      {
        title: 'Absolute level: a few decibels',
        text: 'Mounts are compared; how loud yours will be in your room is not promised. Real speakers of one type differ by 15 to 20 % in their resonance. The nine speakers offered are invented, plausible ones: measure yours, or change every value.'
      },
      {
        title: 'The locomotive',
        text: 'The chassis that nearly closes a shell’s open bottom; in the hand, the board of a layout; windows, seams and leaks at the frame, filling in a box, the mechanism inside, walls that rattle or move, air rubbing in slits below about 1 mm.'
      },
      {
        title: 'The speaker at work',
        text: 'Cone break-up, the coil’s inductance, heat that changes its resistance, large excursions.'
      },
      {
        title: 'The sounds',
        text: 'They are made from how engines, whistles and bells work and tuned by their spectra beside real recordings; none is a measurement of a locomotive. You stand in one place: nothing comes nearer or goes away.'
      },
      {
        title: 'Before it and after it',
        text: 'The decoder’s own bandwidth and distortion; the room, the table top; your headphones and your ears. Loudness follows ITU-R BS.1770-5, which knows nothing of masking or of how the ear changes at low levels.'
      }
    ]
  }
];
