import { levelCourse } from '../../../src/lib/listening/level-course.js';
import { lineLevels } from '../../../src/lib/listening/line-levels.js';
import { powerSpectrum } from '../../../src/lib/listening/power-spectrum.js';
import { spectrumCurve } from '../../../src/lib/listening/spectrum-curve.js';
import type { HarmonicColumn, HarmonicRow } from '../../../src/lib/plot/readout/harmonic-row.js';
import { harmonicMarks } from '../../../src/lib/plot/marks/harmonic-marks.js';
import { frequencyText } from '../../../src/lib/format/frequency-text.js';
import { random } from '../../../src/lib/sounds/blocks/random.js';
import { sampleFamily } from './sample-family.js';

const RATE = 48000;

/** Two seconds of puffs at a rate with every sixth one stronger, over noise that comes with them: something like an engine. */
function puffs(firing: number, seconds: number): Float32Array {
  const chance = random(7);
  const length = RATE * seconds;
  const out = new Float32Array(length);
  const strength = Array.from({ length: 6 }, () => 0.7 + 0.6 * chance.uniform());
  let low = 0;
  for (let n = 0; n < firing * seconds; n++) {
    const start = Math.round((n * RATE) / firing);
    const decay = RATE * 0.006;
    for (let i = 0; i < 6 * decay; i++) {
      const t = i / decay;
      low += 0.25 * (chance.gaussian() - low);
      out[(start + i) % length] +=
        0.12 * strength[n % 6] * Math.exp(-t) * (Math.sin(Math.PI * Math.min(1, t)) * 2 + 0.5 * low);
    }
  }
  const mean = out.reduce((sum, each) => sum + each, 0) / length;
  return out.map((each) => each - mean + 0.004 * chance.gaussian());
}

/** Level, spectrum, marks and table as the page would hand them to the pictures. */
export function sampleSound(firing: number, heard: number, mounts: number) {
  const loop = puffs(firing, 2);
  const start = loop.map((each, i) => each * Math.min(1, 0.15 + i / RATE / 1.2));
  const { power, binWidth } = powerSpectrum(loop, RATE);
  const { curves } = sampleFamily(mounts, heard, 1260);
  const weights = curves.map((curve) =>
    power.map((_, k) => {
      const f = Math.max(50, Math.min(15999, k * binWidth));
      const i = Math.min(400, Math.round((400 * Math.log(f / 50)) / Math.log(320)));
      return 10 ** (curve.levelDb[i] / 10) * Math.min(1, (k * binWidth) / 50) ** 6;
    })
  );
  const marks = harmonicMarks(
    [{ frequency: firing, name: `fires ${firing} times a second`, harmonics: 32 }],
    16000
  );
  const numbers = [1, 2, 3, 4, 6, 8, 12, 16];
  const lines = numbers.map((n) => n * firing);
  const own = lineLevels(power, binWidth, lines);
  const through = weights.map((weight) =>
    lines.map((line) => 10 * Math.log10(weight[Math.round(line / binWidth)]))
  );
  return {
    course: levelCourse(start, RATE, 400),
    sound: spectrumCurve(power, binWidth, 20, 16000, 600),
    through: spectrumCurve(power, binWidth, 20, 16000, 600, weights[heard - 1]),
    name: curves[heard - 1].name,
    marks,
    columns: curves as HarmonicColumn[],
    rows: numbers.map((number, i): HarmonicRow => ({
      number,
      frequencyText: frequencyText(lines[i]),
      ownDb: own[i],
      throughDb: through.map((levels, m) => (m === 4 && i === 2 ? null : levels[i]))
    }))
  };
}
