import { soundSpeed } from '../../acoustics/air.js';
import type { Hertz, Metres } from '../../units.js';
import { frequencyWords } from '../../format/frequency-words.js';
import { demoMount } from './demo-mounts.js';
import type { HeardMount } from './heard-mount.js';

/** One step of *how it works*: plain words first, the trade's second, symbols last. */
export interface Step {
  title: string;
  plain: string;
  /** A fact of the trade that has no published source. */
  practice?: string;
  trade: string;
  symbols: string;
  source: string;
  /** What is heard; several take turns. */
  hear: readonly HeardMount[];
  /** It is heard over the board. */
  onLayout?: true;
  /** What to listen for. */
  listenFor: string;
}

const AIR = { temperatureC: 20 };

/** The steps; their figures are those of the demo benches at 20 °C, lengths written as the user wants them. */
export function steps(lengthWords: (metres: Metres) => string): Step[] {
  const length = (metres: Metres): string => unbroken(lengthWords(metres));
  const gap = (metres: Metres): string =>
    metres < 0.001 && lengthWords(1).endsWith('in')
      ? `${Math.round(1e5 * metres) / 100}\u00a0mm`
      : unbroken(lengthWords(metres));
  const frequency = (hertz: Hertz): string => unbroken(frequencyWords(hertz));
  const [free, plate, shell, box] = (['free', 'plate', 'shell', 'box'] as const).map(
    (kind) => demoMount(kind).figures
  );
  const c = soundSpeed(AIR);
  const halfWave = (string: Metres): string => frequency(c / (2 * string));
  const octaves = Math.log2(plate.string! / free.string!);
  const air = box.box!;
  return [
    {
      title: 'The bare speaker',
      plain:
        'A cone that moves forward pushes the air in front of it and thins the air behind it, in the same instant. Both waves run round the rim and meet. On a low note they are still in step when they meet, and one fills what the other has emptied: the low notes are gone before they reach you.',
      trade: 'The back wave cancels the front wave; a speaker without a baffle is a dipole.',
      symbols: 'H = j·k·d at low frequency: k = 2πf/c, and d the arm, how far apart the two sides act.',
      source: 'H. Lamb, Hydrodynamics, 6th ed.',
      hear: ['free air'],
      listenFor: 'thin, as if from a tin: the beat of the engine is there, its weight is not'
    },
    {
      title: 'The string, and half a wave',
      plain: `Lay a string from the middle of the cone round the nearest edge to the middle of its back: that is the way the back wave has to go. When the string is half a wave long, the detour has turned the back wave round and it helps. On longer waves it cancels, more and more. Half a wave is ${length(free.string!)} long at ${halfWave(free.string!)}, and ${length(plate.string!)} long at ${halfWave(plate.string!)}.`,
      trade: 'String path and corner frequency; below the corner the sound falls by 6 dB each octave.',
      symbols: `f = c / (2·D): D the string, c = ${Math.round(c)} m/s at 20 °C.`,
      source:
        'speed of sound: ISO 9613-1:1993; the corner is exact at low frequency for a small cone in the middle of a round plate (Lamb, as above)',
      hear: ['free air', 'plate'],
      listenFor: 'short string and long string in turns: the low end goes and comes, the top stays'
    },
    {
      title: 'A plate makes the string longer',
      plain: `Hold a flat plate of card or styrene round the speaker. The string now runs out to its edge and back: ${length(plate.string!)} instead of ${length(free.string!)}. The loss begins ${octaves.toFixed(1)} octaves further down, with the same speaker and the same amplifier.`,
      practice: 'A string of 100 to 150 mm (4 to 6 in) is enough for the small speakers that fit in models.',
      trade: `A baffle. Sound goes round all its edges, so a long plate acts like a longer string than its nearest edge says: this one like ${length(Math.round(plate.actsLike! * 1000) / 1000)}.`,
      symbols: 'H = (jf/fc) / (1 + jf/fc), fc = c / (2π·d).',
      source: 'circle and ellipse: Lamb, as above; rectangle: our own fit to a wave solution, 0.3 to 0.8 dB',
      hear: ['plate'],
      listenFor: 'fuller and clearly louder'
    },
    {
      title: 'Fold the plate: the shell',
      plain: `A wide plate does not fit into a locomotive, but folded down on both sides it is the locomotive: the shell. The string runs over the roof, down the wall, round its lower edge and up inside: ${length(shell.string!)}. Folding also makes a room. Closed at its ends and open below, it rings like a bottle blown across, here at ${frequency(shell.ring!)}. That is a peak of 11 dB: by the wave solution you see and hear it; the rule of thumb leaves it out of its curve and its sound.`,
      practice: 'A speaker that uses the shell as its baffle is all but inaudible until the shell is on.',
      trade: 'A folded baffle, and a quarter-wave pipe.',
      symbols:
        'D = 2·(H + W/2); rings at f = c / (4·(H + δ)): H height, W width inside, δ the end correction of the open bottom.',
      source: 'arm and end correction: our own fits to a wave solution, about 1 dB and 4 %',
      hear: ['shell'],
      listenFor: 'nearly as full as the plate; by the wave solution, and in a real shell, with its own ring'
    },
    {
      title: 'The closed box: air as a spring',
      plain: `Close up the back and there is no way round at all: no string. But the air shut in is a spring behind the cone, and the less air, the stiffer. In ${Math.round(air.net * 1e6)} cm³ the speaker’s own note rises from ${frequency(box.speaker.fs)} to ${frequency(air.fc)}, and it booms there by ${air.peakDb.toFixed(0)} dB. Below that note it falls by 12 dB each octave.`,
      practice: 'A box and a plate differ less in loudness than in colour.',
      trade: 'Compliance of the enclosed air; system resonance and Qtc.',
      symbols: 'fc = fs·√(1 + Vas/V), Qtc = Qts·√(1 + Vas/V).',
      source: 'R. H. Small, Closed-Box Loudspeaker Systems, J. Audio Eng. Soc. 20 (1972) 798',
      hear: ['box'],
      listenFor: 'loud in the middle, one note stands out'
    },
    {
      title: 'The board under the layout',
      plain: `On a layout a hard board lies below. It throws the sound back like a mirror: it is as if a second mount stood upside down below it. That of a closed box pushes when the box pushes, and low notes gain 6 dB. That of an open mount pushes the other way, since its back is towards you: at 300 Hz the plate ${length(0.035)} above the board loses 13 dB to its own reflection, the empty shell ${length(0.014)} above it 4 dB. So in the hand the plate is ahead, on the layout the box.`,
      trade:
        'Mirror images: a closed box doubles, a dipole that faces up cancels the more, the lower it stands.',
      symbols:
        'a closed box: 2·cos(kh·cos θ); a small open mount: 2·sin(kh·cos θ), h its height, θ from straight up.',
      source: 'image of a source in a rigid plane, any textbook of acoustics; figures by the wave solution',
      hear: ['plate', 'box'],
      onLayout: true,
      listenFor: 'on the layout the box has the weight and the plate has lost it; key B brings back the hand'
    },
    {
      title: 'The chassis in the shell',
      plain: `A locomotive’s shell is not open below: the chassis closes it but for a slit on either side. What was a wide mouth is a narrow one, so the shell’s own note falls: in no. 41 from 1.5 kHz to 1.2 kHz with slits of ${length(0.001)}, to 0.9 kHz with ${gap(0.0003)}. And it stands out more: by 17 dB in place of 11. The tighter the slits, the more the shell is a closed box.`,
      practice: `Slits of ${gap(0.0003)} to ${length(0.002)} between chassis and shell.`,
      trade:
        'A resonator with a neck: the air in the slits is the mass, the air above the chassis the spring.',
      symbols: 'f = c/(2π)·√(S/(V·t)): S the area of the slits, t their depth and its ends, V the air above.',
      source: 'H. von Helmholtz, 1863; figures by the wave solution',
      hear: ['shell', 'chassis'],
      listenFor: 'empty shell and chassis in turns: the ring goes down and grows'
    },
    {
      title: 'A leak',
      plain: `A box is closed only where it is tight. A gap of ${gap(0.0001)} all round the speaker’s frame, a sheet of paper that was not glued, costs the small box 3 dB at 300 Hz and 7 dB at 500 Hz. Low notes take the way through the gap: there the pressure in the box is highest.`,
      practice: 'Press on the cone, slowly: in a tight box it comes back slowly.',
      trade: 'Leakage loss; the slit rubs on the air, so it takes power besides.',
      symbols:
        'Z = 12·η·t/(g³·ℓ) at low frequency: g the gap, t its depth, ℓ its length. Half the gap rubs eight times as much.',
      source: 'flow between two planes, any textbook of acoustics; figures by the wave solution',
      hear: ['box', 'leak'],
      listenFor: 'tight and leaky in turns: the one note that stood out is gone'
    }
  ];
}

/** A figure and its unit stay on one line. */
function unbroken(words: string): string {
  return words.replaceAll(' ', '\u00a0');
}
