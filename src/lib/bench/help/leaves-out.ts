/** Something the models do not know, with its size where it is known. */
export interface Gap {
  title: string;
  text: string;
}

/** What is left out, the largest first. Details and sources stand in the project’s docs/models. */
export const LEAVES_OUT: readonly Gap[] = [
  {
    title: 'The hump of an open mount: up to 9 dB too low',
    text: 'Where a plate is two thirds of a wave to a whole wave wide, a real one is 6 to 8 dB louder than the endless plate, and ripples above. The rule of thumb stays below that line; at worst it reads 9 dB too low. (Exact series for a small source on a disc: C. Flammer, Spheroidal Wave Functions, 1957; C. J. Bouwkamp, 1950.)'
  },
  {
    title: 'The ring of a shell: a peak of 9 to 15 dB',
    text: 'A shell with closed ends rings where it is a quarter of a wave deep. The picture marks the place; the curve, the sound and the level figures do not have the peak. (Our own fit to a wave solution: its place within 3 %.)'
  },
  {
    title: 'Everywhere but straight in front',
    text: 'All is computed straight in front of the cone and far away. A speaker in the roof, seen from the side as on most layouts, sounds different.'
  },
  {
    title: 'Absolute level: a few decibels',
    text: 'Mounts are compared; how loud yours will be in your room is not promised. Real speakers of one type differ by 15 to 20 % in their resonance. The nine speakers offered are invented, plausible ones: measure yours, or change every value.'
  },
  {
    title: 'A box’s front and its inside',
    text: 'A real box overshoots our step from all-round to front-only sound by 1.5 to 3.4 dB; standing waves inside, leaks and filling are not there.'
  },
  {
    title: 'Smaller misses of the rule',
    text: 'Plates that are rectangles: 0.3 dB with the speaker in the middle, 0.8 dB far off it, at low frequency. Shells: about 1 dB there.'
  },
  {
    title: 'The locomotive',
    text: 'The chassis and the baseboard that nearly close a shell’s open bottom, windows, seams and leaks at the frame, the mechanism inside, walls that rattle or move, air rubbing in slits below about 1 mm.'
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
];
