import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import ResponsePicture from '../../../../src/lib/plot/pictures/ResponsePicture.svelte';
import SpectrumPicture from '../../../../src/lib/plot/pictures/SpectrumPicture.svelte';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { checkInstallation } from '../../../../src/lib/acoustics/mounts/check-installation.js';
import { refusal } from '../../../../src/lib/acoustics/refusal.js';
import { MODEL_NAMES } from '../../../../src/lib/evaluation/models.js';
import type { Known, Question } from '../../../../src/lib/evaluation/wave-jobs.js';
import type { ModelName, Setup } from '../../../../src/lib/file/bench-file.js';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { harmonicMarks } from '../../../../src/lib/plot/marks/harmonic-marks.js';
import type { ResponseMarker } from '../../../../src/lib/plot/response-curve.js';
import { pictureLayout, type PictureLayout } from '../../../../src/lib/plot/scales/picture-layout.js';
import { hallMarkers } from '../../../../src/lib/screens/parts/curves/hall-markers.js';
import { FULL, SHORT, type LateWords } from '../../../../src/lib/screens/parts/curves/late-words.js';
import { ruleReaches } from '../../../../src/lib/screens/parts/curves/rule-reaches.js';
import { ruleWords } from '../../../../src/lib/screens/parts/curves/rule-words.js';
import { curveOf, ruleBeside } from '../../../../src/lib/screens/parts/curves/stand-curves.js';
import { responseMarkers } from '../../../../src/lib/screens/response/response-markers.js';
import { MOUNT_DRAWER, setupOf } from '../../../../src/lib/screens/shelf/mount-drawer.js';
import { hearWaves } from '../../../../src/lib/waves/curve/heard-waves.js';
import { solutionKey, solveMount, type SolvedMount } from '../../../../src/lib/waves/wave-solution.js';
import { linesOf, textsOf, wrongTexts } from '../../../helpers/picture-texts.js';

/** Without a browser pictures are drawn this wide, unless they are told. */
const WIDTH = 960;

/** Widths of the picture on a phone, a large phone on its side, a tablet, a desk, and in halls of 1024 and 1920 pixels. */
const WIDTHS = [368, 560, 780, 1360];
const HALLS = [
  { width: 960, height: 310, textSize: 27 },
  { width: 1840, height: 450, textSize: 38 }
];

const demo = demoBench();
const oval = Object.keys(demo.speakers)[0];
const drawer = MOUNT_DRAWER.map((mount) => setupOf(mount, oval));
/** The demo bench, it with two more mounts, and one of every mount of the drawer. */
const SHELVES = [demo.setups, [...demo.setups, ...drawer.slice(-3, -1)], drawer.slice(0, 4), drawer.slice(4)];

/** Drafts in the place of full solutions, which say where they end: the words are set as they would be. */
const solved = new Map<string, SolvedMount>();
const waves = {
  best: ({ installation, air, listener }: Question): Known | null => {
    const key = solutionKey(installation, air);
    if (refusal(() => checkInstallation(installation))) return null;
    const mount = solved.get(key) ?? solveMount(installation, air, { accuracy: 'draft' });
    solved.set(key, mount);
    return { accuracy: 'full', heard: hearWaves(mount, listener) };
  },
  refusal: () => null
};

function benchOf(setups: Setup[], model: ModelName): Bench {
  const view = { ...demo.view, heard: 0, measuredAgainst: 0, model };
  return new Bench({ ...demo, view, setups }, waves);
}

const wrong = (body: string, { area, width }: PictureLayout) =>
  wrongTexts(textsOf(body), area, width, linesOf(body));

describe.each(MODEL_NAMES)('whichever mount of the demo is heard, by the %s', (model) => {
  it('no text of the response picture lies on a curve, a bar, a mark or another text', () => {
    for (const setups of SHELVES) {
      const bench = benchOf(setups, model);
      for (const { index, setup } of bench.stands)
        // What the wave solution marks has no lengths.
        for (const inches of model === 'rule' ? [false, true] : [false]) {
          bench.hear(index);
          bench.setInches(inches);
          const curves = [
            ...bench.stands.flatMap((stand) => curveOf(stand, stand === bench.heard)),
            ...ruleBeside(bench).map((curve) => ({ ...curve, written: ruleWords(ruleReaches(bench)) }))
          ];
          const markers = responseMarkers(bench.heard, bench.file.air, bench.listener, (m) =>
            bench.length(m)
          );
          for (const usualWidth of WIDTHS) {
            const height = usualWidth < 560 ? 200 : 240;
            const props = { curves, bands: null, markers, height, usualWidth };
            const { body } = render(ResponsePicture, { props });
            expect(wrong(body, pictureLayout(usualWidth, height, false, undefined, 1)), setup.name).toEqual(
              []
            );
            // What is not written above stands below.
            for (const { text } of markers) expect(body, setup.name).toContain(text.replace('← ', ''));
          }
        }
    }
  });

  it('nor in the hall, against whichever other mount', () => {
    for (const setups of SHELVES.slice(0, 2)) {
      const bench = benchOf(setups, model);
      for (const { index: heard } of bench.stands)
        for (const { index: against } of bench.stands) {
          bench.hear(heard);
          bench.measureAgainst(against);
          const curves = [
            ...[...new Set([bench.measuredAgainst, bench.heard])].flatMap((one) =>
              curveOf(one, one === bench.heard)
            ),
            ...ruleBeside(bench)
          ];
          const markers = hallMarkers(bench.heard, bench.file.air, bench.listener);
          const ends = curves.some((curve) => curve.heard && curve.computedTo !== undefined);
          for (const { width, height, textSize } of HALLS) {
            const sized = { height, usualWidth: width, bare: true, bareTextSize: textSize };
            const { body } = render(ResponsePicture, { props: { curves, bands: null, markers, ...sized } });
            const lanes = Math.min(2, markers.length + (ends ? 1 : 0));
            expect(wrong(body, pictureLayout(width, height, true, textSize, lanes)), `${heard}`).toEqual([]);
            // A hall has no line of words below: all of them stand above.
            for (const { text } of markers) expect(body).toContain(text);
          }
        }
    }
  });
});

it('nor does any that the wave solution has marked, at the desk and in the hall', () => {
  const bench = benchOf(demo.setups, 'rule');
  bench.hear(1);
  const curves = bench.stands.flatMap((stand) =>
    curveOf(stand, stand === bench.heard).map((curve) => ({ ...curve, computedTo: 10000 }))
  );
  const marked = (words: LateWords, hump: number): ResponseMarker[] => [
    { frequency: hump, text: words.half, kind: 'remark' },
    { frequency: 2.6 * hump, text: words.whole, kind: 'remark' },
    { frequency: hump / 4, text: words.hardly, kind: 'range-below' }
  ];
  // Half a wave of the longest string that plates of the knobs' reach have, 200 mm, is 860 Hz.
  for (let hump = 860; hump < 6000; hump *= 1.07)
    for (const [words, bare] of [
      [FULL, false],
      [SHORT, true]
    ] as const) {
      const markers = marked(words, hump);
      const props = { curves, bands: null, markers, height: 400, bare, bareTextSize: 26 };
      const texts = textsOf(render(ResponsePicture, { props }).body);
      const layout = pictureLayout(WIDTH, 400, bare, 26, bare ? 2 : 1);
      expect(wrongTexts(texts, layout.area, WIDTH), `${hump}`).toEqual([]);
      // A hall has no line of words below: all of them stand above.
      if (bare) for (const { text } of markers) expect(texts.map((one) => one.text)).toContain(text);
    }
});

it('a hall is told where the solution ends, also of a mount of which nothing else is said', () => {
  const bench = benchOf(demo.setups, 'rule');
  const curves = curveOf(bench.heard, true).map((curve) => ({ ...curve, computedTo: 10000 }));
  const props = { curves, bands: null, markers: [], height: 400, bare: true, bareTextSize: 26 };
  const texts = textsOf(render(ResponsePicture, { props }).body);
  expect(texts.map(({ text }) => text)).toContain('estimated →');
  expect(wrongTexts(texts, pictureLayout(WIDTH, 400, true, 26, 1).area, WIDTH)).toEqual([]);
});

it.each(WIDTHS)('nor does any of the spectrum, whatever rate is marked in it, in %i pixels', (usualWidth) => {
  const frequency = Float64Array.from({ length: 200 }, (_, i) => 20 * 800 ** (i / 199));
  const sound = { frequency, levelDb: frequency.map((f) => -10 * Math.log10(f / 20)) };
  const layout = pictureLayout(usualWidth, 240, false, undefined, 2);
  for (let rate = 22; rate < 4000; rate *= 1.13) {
    const marks = harmonicMarks(
      [
        { frequency: rate, name: 'firing rate', harmonics: 24 },
        { frequency: rate / 2, name: 'half the firing rate', harmonics: 1 }
      ],
      16000
    );
    const reachesText = 'too low for this speaker here';
    const props = { sound, marks, reaches: 300, reachesText, height: 240, usualWidth };
    const { body } = render(SpectrumPicture, { props });
    expect(wrong(body, layout), `${rate}`).toEqual([]);
    for (const name of ['firing rate', 'too low for this speaker here']) expect(body).toContain(name);
  }
});
