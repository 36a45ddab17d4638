/** One answer to *what is this?*: plain words, the formula where there is one, and where it comes from. */
export interface Explanation {
  title: string;
  text: string;
  formula?: string;
  source: string;
}

export const EXPLANATIONS = {
  loudness: {
    title: 'How loud on this sound',
    text: 'The sound is played through the mount and its loudness is measured as broadcasters do: weighted by the ear’s sensitivity, quiet passages left out. Written is the difference to the mount that is measured against. Another sound gives another figure.',
    source: 'ITU-R BS.1770-5, integrated loudness'
  },
  reach: {
    title: 'Where it gets thin',
    text: 'Below this note the mount is more than 10 dB under the line at 0 dB, the speaker in an endless plate. It is one line for all mounts, so that a mount that is quiet everywhere does not look deep. In the picture, it is where the curve goes through −10 dB; smoothed by a third of an octave and followed down from 1 kHz.',
    source:
      'as the effective frequency range of IEC 60268-5 (from memory), but from one level for all; bands as in IEC 61260-1:2014'
  },
  model: {
    title: 'Two models',
    text: 'The rule of thumb is one curve with one bend, worked out at once, straight in front. The wave solution works out the sound on both sides of every wall: the hump, the ring of a shell, every angle and distance. It is there as a draft while a size is dragged, and in full a moment later. Beside it the rule is called good as far as it stays within 3 dB of it, straight in front. Above the frequency it is solved to it is an estimate: what the cone alone sends to where you listen.',
    source:
      'boundary elements: S. A. Sauter and C. Schwab, Boundary Element Methods, 2011; checked against exact series for discs'
  },
  air: {
    title: 'The waves in the air',
    text: 'The mount and the air around it, cut through the middle of the cone. Where the air is pressed together it is drawn in one colour, where it is thinned out in the other; the colour goes about by the square root of the pressure, so that faint waves are seen; in between is ordinary air, on the way from one to the other. A steady tone is slowed down so that one swing takes about a second and a half; one puff is a single short push of the cone. In the corner of a tone is seen at the same moment, in the same colours, the mount that levels are written against. Where front and back cancel is seen best in the circle: it is the level at that frequency all round, far away or where you listen, against the line at 0 dB.',
    source: 'the same wave solution; section through a model of rigid walls without thickness'
  },
  string: {
    title: 'The string: nearest way round',
    text: 'Lay a string from the middle of the cone over the surface, round the nearest free edge, to the middle of the cone on the other side. Sound from the back takes that way to meet the sound from the front, which it cancels. A closed box has no way round.',
    formula: 'flat plate: twice the distance to the nearest edge; folded plate: unfolded first',
    source: 'geometry; that 100 to 150 mm is enough for small speakers is common practice'
  },
  actsLike: {
    title: 'What it acts like',
    text: 'Sound goes round all edges, not just the nearest. A long plate therefore does more than its nearest edge says: it acts like a small speaker in a round plate with this string.',
    formula: 'π × arm, the arm averaged over the cone',
    source:
      'flow about a disc and an elliptic plate: H. Lamb, Hydrodynamics, 6th ed.; rectangle: our fit, 0.3 to 0.8 dB'
  },
  halfWave: {
    title: 'Half a wave of the string',
    text: 'Where the string is half a wavelength long, front and back begin to help each other. Below it the sound falls by 6 dB each octave, and the speaker’s own fall adds to that.',
    formula: 'speed of sound / (2 × string)',
    source: 'first-order model; exact at low frequency for a small cone in a round plate'
  },
  ring: {
    title: 'Where the shell rings',
    text: 'A shell with closed ends is also a pipe, open at the bottom and a quarter of a wave long. The rule of thumb leaves its ring out: there is a peak that its curve does not show, of 5 to 13 dB in a shell flatter than wide, of 8 to 21 dB in one up to twice as deep as wide. The wave solution has it, and there its own peak is marked.',
    formula: 'speed of sound / (4 × (height + end correction of the open bottom))',
    source:
      'end correction of a rectangle (Rayleigh; pipes: H. Levine and J. Schwinger, Phys. Rev. 73 (1948) 383), fitted to our wave solution within 4 %'
  },
  loss: {
    title: 'What is lost inside the shell',
    text: 'The share of a wave that is lost on its way through the air inside. Friction at smooth walls alone takes about 0.15 % in the shell of a full-width diesel and 0.26 % in one half as wide. A shell full of mechanism takes perhaps 1 to 3 %: an estimate, no measurement is known. More loss makes the ring lower and shorter: the demo’s cab body rings by 10.7 dB with 0.3 %, by 9.2 dB with 3 %.',
    source: 'boundary layer at a wall: G. Kirchhoff, Ann. Phys. 134 (1868) 177'
  },
  box: {
    title: 'The air in the box',
    text: 'The air inside is a spring beside the speaker’s own. The less air, the stiffer: the resonance rises and booms more. The speaker’s body takes its share of the inside.',
    formula: 'resonance × √(1 + Vas/V), the same for its Q',
    source: 'R. H. Small, J. Audio Eng. Soc. 20 (1972) 798'
  },
  zero: {
    title: 'The line at 0 dB',
    text: 'The same speaker in an endless plate, straight in front, in the middle of its range. Nothing of the back wave comes round an endless plate, but the half of the sound behind it is given away. Where mounts have different speakers, all get the same voltage, and the line is the speaker of the mount that levels are written against.',
    formula: 'sensitivity ∝ Sd·Bl/(Re·Mms)',
    source: 'R. H. Small, J. Audio Eng. Soc. 20 (1972) 383'
  },
  realLevel: {
    title: 'Levels where you listen',
    text: 'How loud a steady tone of each frequency is where you listen, if the voltage at the speakers is the drive that is set below under “How loud, and what it costs”. Far away it is told for 1 m. The bars are the sound at that drive, a third octave each: together they are as loud as the whole. The curves stay what they are; what is written at the axis changes.',
    formula: 'ρ·Sd·Bl·U/(2π·r·Re·Mms), times the curve',
    source: 'R. H. Small, J. Audio Eng. Soc. 20 (1972) 383; 20 µPa: ISO 1683:2015'
  },
  turn: {
    title: 'Why the order turns over on the layout',
    text: 'A hard board mirrors the mount. What comes out of a closed box comes out of its mirror image in step: the low notes gain 6 dB. A mount that is open at its back sends out two sounds out of step; in the mirror they are the other way round, so that close over the board the low notes cancel once more: 300 Hz lose 13 dB of a plate 35 mm above it.',
    source:
      'image of a source and of a dipole, any acoustics handbook; figures by the wave solution, 60° from straight up'
  },
  bars: {
    title: 'What is left of the sound',
    text: 'Each bar is a third of an octave of the sound as it is (outline) and as much of it as the heard mount lets through (filled). The gap is what is lost. The bars have a scale of their own: one grid step is 10 dB.',
    source: 'bands: IEC 61260-1:2014'
  }
} as const satisfies Record<string, Explanation>;

export type Topic = keyof typeof EXPLANATIONS;
