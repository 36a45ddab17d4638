import { type LevelCourse, levelCourse } from '../../listening/level-course.js';
import { type SpectrumCurve, spectrumCurve } from '../../listening/spectrum-curve.js';
import { harmonicMarks } from '../../plot/marks/harmonic-marks.js';
import { soundRange } from '../../plot/scales/sound-range.js';
import type { SpectrumMark } from '../../plot/marks/sound-spectrum.js';
import { marksOf } from '../../sounds/marks-of.js';
import type { MarkedRate } from '../../sounds/sound-kind.js';
import type { Stand } from '../../evaluation/stand.js';
import { type Harmonic, harmonicsOf } from '../../evaluation/harmonics.js';
import { powerGain } from '../../evaluation/power-gain.js';
import type { Measured } from '../../bench/sounding/measured-loop.svelte.js';

/** Points of the level over time, and of the spectrum. */
const POINTS = { course: 400, spectrum: 600 };

/** What the page shows of a sound and of what its mounts let through. */
export interface SoundPicture {
  spectrum: SpectrumCurve;
  /** On the same scale, behind the heard mount; null where it cannot be built. */
  through: SpectrumCurve | null;
  marks: SpectrumMark[];
  /** The rate that the sound is known by, and its multiples; none where it has no such rate. */
  rate: MarkedRate | null;
  harmonics: Harmonic[];
}

/** How loud a loop is as it goes on; that does not hang on any mount. */
export function soundCourse({ samples, sampleRate }: Measured): LevelCourse {
  return levelCourse(samples, sampleRate, POINTS.course);
}

/** The picture of a loop that has been measured, for the mounts on the shelf. */
export function soundPicture(
  { sound, figures }: Measured,
  heard: Stand,
  stands: readonly Stand[]
): SoundPicture {
  const { power, binWidth } = figures;
  const { from, to } = soundRange;
  const curve = (weight?: Float64Array) => spectrumCurve(power, binWidth, from, to, POINTS.spectrum, weight);
  const marked = sound.kind === 'recording' ? [] : marksOf(sound);
  const rate = marked.find(({ harmonics }) => harmonics > 1) ?? null;
  return {
    spectrum: curve(),
    through: heard.computed && curve(powerGain(heard.computed.answer, power.length, binWidth)),
    marks: harmonicMarks(marked, to),
    rate,
    harmonics: rate ? harmonicsOf(rate, figures, stands) : []
  };
}
