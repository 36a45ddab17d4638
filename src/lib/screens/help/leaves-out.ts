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
        title: 'Everywhere but straight in front, the board: 13 dB too high to 6 dB too low',
        text: 'A speaker in the roof, seen from the side over a board as on most layouts, sounds different: at 300 Hz a plate loses 13 dB to the board and a box gains 6. The wave solution has every angle, distance and the board.'
      },
      {
        title: 'Chassis, leaks, grilles, a body round the box: up to 7 dB, a ring of 17 dB',
        text: 'A gap of 0.1 mm round the frame costs a small box 7 dB at 500 Hz; a chassis moves a shell’s ring down and makes it 17 dB high. The wave solution has all of them; the rule refuses them.'
      },
      {
        title: 'The edges of a box’s front, standing waves inside: up to 4.3 dB',
        text: 'A real box stands above the step from all-round to front-only sound, by about 3 dB with an oblong front, by up to 4.3 dB with a square one, by more at a standing wave inside. The wave solution has both.'
      },
      {
        title: 'Smaller misses: 0.3 to 2.5 dB',
        text: 'Plates that are rectangles: 0.3 dB with the speaker in the middle, 0.5 dB if they are three times as long as wide, 0.8 dB far off the middle, at low frequency. Shells: up to 2.5 dB there.'
      }
    ]
  },
  {
    title: 'The wave solution does not know',
    gaps: [
      {
        title: `What is above ${full.highest / 1000} kHz: about 5 dB`,
        text: `It is solved to ${full.highest / 1000} kHz, as a draft to ${draft.highest / 1000} kHz, a small mount to as much as ${draft.reach / 1000} kHz, and a very large one not as far; above, it goes over into what the cone alone sends to where one listens. The size is an estimate.`
      },
      {
        title: `The last ${full.errorDb} dB`,
        text: `The level in front of the cone is that of a much finer computation within ${full.errorDb} dB, as a draft within ${draft.errorDb} dB. In sharp dips and on resonances, and from the side above 6 kHz, it misses more.`
      },
      {
        title: 'Whether it is right for folded shells: 0.3 dB',
        text: 'Round plates are checked against an exact solution. For shells there is none: they are checked against a second method, finite differences in time, in free air and over the board: within 0.3 dB, and 1 dB where a resonance or a dip moves. No model was measured yet.'
      },
      {
        title: 'The thickness of walls: up to 0.7 dB',
        text: 'Walls are as thin as can be, and a box is as large outside as inside. With walls of 1 mm the small box is up to 0.7 dB different.'
      },
      {
        title: 'How soon a ring dies away: 0.4 to 1.5 dB',
        text: 'With 1 % lost inside the ring of no. 41 is 0.4 dB lower than with the usual 0.3 %, with 3 % it is 1.5 dB lower. What is lost inside a shell is set at the mount, 0.3 % unless told. Friction at smooth walls alone takes about half of that in the shell of a full-width diesel, most of it in one half as wide; a shell full of weights and wires perhaps 1 to 3 %. That is an estimate.'
      },
      {
        title: 'The shape of the cone: about 1 dB above 5 kHz',
        text: 'That is an estimate. It is flat, stiff and level with the wall; frame, magnet and basket are not in the way, but for the room they take in a box.'
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
        title: 'Walls that move: 1 to 6 dB',
        text: 'A plate or shell of 1 mm styrene passes some of the sound: about 0.9 dB is lost as if it hung limp, of thin card of 0.2 kg/m² half, 6 dB. Where a wall swings by itself, from about 50 Hz a plate and from 600 Hz the sides of a shell, it is more. These are estimates from the weight of the wall.'
      },
      {
        title: 'A board of finite width: up to 6 dB too loud',
        text: 'The board is endless. One 0.5 m wide does less below about 300 Hz, where half a wave is wider than it: of the 6 dB that a box gains there, less and less is left. That is an estimate, by the step of a loudspeaker’s front (common practice).'
      },
      {
        title: 'Windows, seams, filling: a few decibels',
        text: 'Openings in a shell’s walls; cotton in a box, which makes the box act up to 1.4 times as large and lowers its note by up to 15 %, and its boom by a few decibels (common practice). Trucks, track and ballast swallow high notes.'
      },
      {
        title: 'Cone break-up: 5 dB up and down above about 5 kHz',
        text: 'Cones that small swing in parts at high notes; each one differently. From memory of published curves.'
      },
      {
        title: 'The coil’s inductance: 0.6 dB at 10 kHz',
        text: 'For 0.05 mH and 8 Ω, as usual for such speakers (common practice); it rises by frequency.'
      },
      {
        title: 'Heat: 1.6 dB',
        text: 'A coil of copper that is 50 °C hotter has a fifth more resistance (0.39 % a degree), and takes and gives 1.6 dB less.'
      },
      {
        title: 'Large excursions: 1 dB and more near the end of travel',
        text: 'Beyond its linear travel a cone follows less and adds tones of its own. 1 dB is about what is lost there (common practice).'
      },
      {
        title: 'The sounds: not a matter of decibels',
        text: 'They are made from how engines, whistles and bells work and tuned by their spectra beside real recordings; none is a measurement of a locomotive. You stand in one place: nothing comes nearer or goes away.'
      },
      {
        title: 'Before it and after it: 5 to 10 dB',
        text: 'A room alone makes so much at low notes, from place to place (common practice). The decoder’s own bandwidth and distortion; the room, the table top; your headphones and your ears. Loudness follows ITU-R BS.1770-5, which knows nothing of masking or of how the ear changes at low levels.'
      }
    ]
  }
];
