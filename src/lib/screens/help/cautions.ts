/** What to take care of, said once and where one finds it. */
export interface Caution {
  title: string;
  text: string;
  source?: string;
}

export const CAUTIONS: readonly Caution[] = [
  {
    title: 'Your hearing',
    text: 'This program cannot know how loud it is at your ear. It starts quiet and never jumps; keep it at the level of a conversation and take breaks. As a measure: 80 dBA for 40 hours a week, 75 dBA for children. At work, 85 dBA for 8 hours a day, and half the time for every 3 dB more.',
    source:
      'Recommendation ITU-T H.870 (WHO and ITU, safe listening); NIOSH, Criteria for a Recommended Standard: Occupational Noise Exposure, 1998'
  },
  {
    title: 'Small voice coils',
    text: 'They burn within seconds on steady tones or on a clipping amplifier, long before it sounds loud. Start low, and stop when it buzzes. The test tones here are meant for headphones; on a small speaker play them softly and briefly.'
  },
  {
    title: 'The amplifier’s least load',
    text: 'Never connect less than the ohms its maker states; two speakers side by side halve them. Too low a load destroys decoders.'
  },
  {
    title: 'Soldering',
    text: 'Unplug everything first. An iron stays hot long after it is off; put it in its stand. Ventilate: flux fumes harm the lungs. Wash your hands afterwards.'
  },
  {
    title: 'Glue',
    text: 'Cyanoacrylate bonds skin in seconds and its fumes sting eyes and lungs; ventilate, and keep your face away. Warmed or on cotton it gives off heat and smoke.'
  },
  {
    title: 'Knives',
    text: 'Cut card and styrene away from yourself, on a mat, with a sharp blade and several light strokes. Cap the blade.'
  },
  {
    title: 'Magnets',
    text: 'A loose magnet that is swallowed is dangerous, two are an emergency. Keep them from children, and away from anyone with an implanted device.'
  },
  {
    title: 'Mains',
    text: 'Nothing here asks you to open anything that is connected to the mains. Use complete, approved power supplies.'
  },
  {
    title: 'Rules and instructions',
    text: 'Your local rules and the makers’ instructions go before anything said here.'
  }
];
