// Solves closed-ended shells of all proportions, writes where each rings into shell-rings.json, and fits `ringFrequency` to them:
//   node tests/reference/shell-rings.mjs
// Half a minute on one core. Sizes inside in mm, frequency in Hz, level straight in front in dB against the same cone velocity in an
// endless plate. The fit is that of least squares of ln f over the range in which it is stated.
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { loadTypescript } from '../../src/cli/load-typescript.mjs';

const { shellTops, shellOf, C } = await loadTypescript('tests/helpers/shell-tops.ts');

const LENGTHS = [40, 60, 100, 152, 250, 400];
const WIDTHS = [16, 22, 30, 40, 50, 70];
const HEIGHTS = [12, 16, 20, 30, 45, 70, 100];
const FLATTEST = 0.4;

const shells = [];
for (const length of LENGTHS)
  for (const width of WIDTHS)
    for (const height of HEIGHTS) {
      if (width > length || height < FLATTEST * width) continue;
      const sizes = { length: length / 1000, width: width / 1000, height: height / 1000 };
      const ring = shellTops(sizes).reduce((best, top) => (top.level > best.level ? top : best));
      const speaker = shellOf(sizes).speaker.name;
      const [frequency, level] = [Number(ring.frequency.toFixed(1)), Number(ring.level.toFixed(2))];
      shells.push({ length, width, height, speaker, frequency, level });
    }

/** ln of the fit over the solved frequency. */
function error({ length, width, height, frequency }, [share, heights, widths]) {
  const a = 1 / Math.hypot(1 / length, 1 / (heights * height + widths * width));
  const b = width;
  const mean =
    2 * a * b * (a * Math.asinh(b / a) + b * Math.asinh(a / b)) + (2 / 3) * (a ** 3 + b ** 3 - Math.hypot(a, b) ** 3);
  const correction = mean / (2 * Math.PI * a * b);
  return Math.log((C * 1000) / (4 * (height + share * correction)) / frequency);
}

/** Gauss and Newton: three coefficients from where they are guessed. */
function fit(coefficients) {
  for (let round = 0; round < 30; round++) {
    const matrix = [0, 1, 2].map(() => [0, 0, 0, 0]);
    for (const shell of shells) {
      const here = error(shell, coefficients);
      const slope = coefficients.map(
        (value, i) => (error(shell, coefficients.with(i, value + 1e-6)) - here) / 1e-6
      );
      matrix.forEach((row, i) => {
        slope.forEach((each, j) => (row[j] += slope[i] * each));
        row[3] -= slope[i] * here;
      });
    }
    coefficients = coefficients.map((value, i) => value + solve3(matrix)[i]);
  }
  return coefficients;
}

function solve3(rows) {
  const m = rows.map((row) => row.slice());
  for (let k = 0; k < 3; k++)
    for (let i = 0; i < 3; i++)
      if (i !== k) {
        const factor = m[i][k] / m[k][k];
        for (let j = k; j < 4; j++) m[i][j] -= factor * m[k][j];
      }
  return m.map((row, i) => row[3] / row[i]);
}

const [share, heights, widths] = fit([0.7, 1, 2]).map((value) => Number(value.toFixed(3)));
const lines = shells.map((shell) => JSON.stringify(shell)).join(',\n  ');
const what = 'Where closed-ended shells ring by the wave solution (inside, in mm), and the coefficients of ringFrequency fitted to them';
const tool = `shell-rings.mjs, Node ${process.versions.node}`;
writeFileSync(
  path.join(import.meta.dirname, 'shell-rings.json'),
  `{\n "what": ${JSON.stringify(what)},\n "tool": ${JSON.stringify(tool)},\n "fit": ${JSON.stringify({ share, heights, widths })},\n "shells": [\n  ${lines}\n ]\n}\n`
);
console.log(share, heights, widths, shells.length);
