import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { demoBench } from '../../src/lib/file/demo-bench.js';
import { installationOf } from '../../src/lib/file/installation-of.js';
import type { Listener } from '../../src/lib/acoustics/listener.js';
import { answerNow } from '../../src/lib/evaluation/solve-now.js';
import { powerGain } from '../../src/lib/evaluation/power-gain.js';
import { filterFor } from '../../src/lib/evaluation/stand.js';
import { usualSound } from '../../src/lib/sounds/roster.js';
import { Desk } from '../../src/lib/workers/sound/answer.js';
import { close } from '../helpers/close.js';

const RATE = 48000;
const BASS = 600;
const HAND: Listener = { angleDeg: 0, plane: 'width' };
const LAYOUT: Listener = { angleDeg: 60, plane: 'width', distance: 0.9, board: true };

/** The cab body as it runs, and a gap of a sheet of paper round the frame in the box. */
const CHASSIS = { height: 0.008, slit: 0.001, ends: 0.002, depth: 0.002, fill: 0.3 };
const GAP = { gap: 0.0001, length: 0.136, depth: 0.002 };

const desk = new Desk();
const sound = usualSound('diesel');
const samples = desk.answer({ kind: 'sound', sound, sampleRate: RATE }) as Float32Array;
desk.answer({ kind: 'keep', key: 'engine', samples, sampleRate: RATE });
const { power, binWidth } = desk.answer({ kind: 'figures', key: 'engine' }) as {
  power: Float64Array;
  binWidth: number;
};

/** Loudness of the whole, and power below 600 Hz, in dB, of the demo's mounts on the engine. */
function levels(listener: Listener): { total: number; bass: number }[] {
  const demo = demoBench();
  const [, , shell, box] = demo.setups;
  const more = [
    { ...shell, mount: { ...shell.mount, chassis: CHASSIS } },
    { ...box, mount: { ...box.mount, leak: GAP } }
  ];
  const bench = { ...demo, setups: [...demo.setups, ...more], listener };
  return bench.setups.map((setup) => {
    const question = { installation: installationOf(bench, setup), air: bench.air, listener };
    const answer = answerNow('wave', question, 'draft', 'full');
    const [loudness] = desk.answer({
      kind: 'loudnessThrough',
      key: 'engine',
      impulseResponses: [filterFor(answer, RATE)]
    }) as number[];
    const gain = powerGain(answer, power.length, binWidth);
    const low = power.subarray(0, Math.ceil(BASS / binWidth));
    return { total: loudness, bass: 10 * Math.log10(low.reduce((sum, p, k) => sum + p * gain[k], 0)) };
  });
}

test('on the layout the ranking turns over, as the table in docs/models/board.md says', () => {
  const page = readFileSync(path.join(import.meta.dirname, '../../docs/models/board.md'), 'utf8');
  const rows = [
    ...page.matchAll(/^\| (Free air|Flat plate|Cab body|Closed box|its chassis in|with a gap) .*$/gm)
  ].map(([row]) =>
    row
      .split('|')
      .slice(2, 6)
      .map((cell) => Number(cell.replace('−', '-')))
  );
  const [hand, layout] = [levels(HAND), levels(LAYOUT)];
  const box = 3;
  expect(rows).toHaveLength(6);
  rows.forEach((row, i) => {
    const [got] = [
      [
        hand[i].total - hand[box].total,
        hand[i].bass - hand[box].bass,
        layout[i].total - layout[box].total,
        layout[i].bass - layout[box].bass
      ]
    ];
    row.forEach((stated, j) =>
      close(got[j], stated, { abs: 0.9, because: 'stated in full, computed as a draft' })
    );
  });
});
