import { render } from 'svelte/server';
import { expect, it } from 'vitest';
import ResponsePicture from '../../../../src/lib/plot/pictures/ResponsePicture.svelte';
import SpectrumPicture from '../../../../src/lib/plot/pictures/SpectrumPicture.svelte';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { harmonicMarks } from '../../../../src/lib/plot/marks/harmonic-marks.js';
import type { ResponseMarker } from '../../../../src/lib/plot/response-curve.js';
import { pictureLayout } from '../../../../src/lib/plot/scales/picture-layout.js';
import { FULL, SHORT, type LateWords } from '../../../../src/lib/screens/parts/curves/late-words.js';
import { curveOf } from '../../../../src/lib/screens/parts/curves/stand-curves.js';
import { responseMarkers } from '../../../../src/lib/screens/response/response-markers.js';
import { MOUNT_DRAWER, setupOf } from '../../../../src/lib/screens/shelf/mount-drawer.js';
import { textsOf, wrongTexts } from '../../../helpers/picture-texts.js';

/** Without a browser pictures are drawn this wide. */
const WIDTH = 960;

/** The demo bench, and one of every mount of the drawer, drawn by the rule of thumb. */
function benches(): Bench[] {
  const demo = demoBench();
  const view = { ...demo.view, heard: 0, measuredAgainst: 0, model: 'rule' as const };
  const oval = Object.keys(demo.speakers)[0];
  const drawer = MOUNT_DRAWER.map((mount) => setupOf(mount, oval));
  return [demo.setups, drawer.slice(0, 4), drawer.slice(4)].map(
    (setups) => new Bench({ ...demo, view, setups })
  );
}

it('no text of the response picture lies on a curve, a bar or another text, whichever mount of the demo is heard', () => {
  for (const bench of benches())
    for (const inches of [false, true])
      for (const { index, setup } of bench.stands) {
        bench.hear(index);
        bench.setInches(inches);
        const curves = bench.stands.flatMap((stand) => curveOf(stand, stand === bench.heard));
        const markers = responseMarkers(bench.heard, bench.file.air, bench.listener, (m) => bench.length(m));
        const { body } = render(ResponsePicture, { props: { curves, bands: null, markers, height: 240 } });
        const { area } = pictureLayout(WIDTH, 240, false, undefined, 1);
        expect(wrongTexts(textsOf(body), area, WIDTH), setup.name).toEqual([]);
        // What is not written above stands below.
        for (const { text } of markers) expect(body, setup.name).toContain(text.replace('← ', ''));
      }
});

it('nor does any that the wave solution has marked, at the desk and in the hall', () => {
  const [bench] = benches();
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
  const [bench] = benches();
  const curves = curveOf(bench.heard, true).map((curve) => ({ ...curve, computedTo: 10000 }));
  const props = { curves, bands: null, markers: [], height: 400, bare: true, bareTextSize: 26 };
  const texts = textsOf(render(ResponsePicture, { props }).body);
  expect(texts.map(({ text }) => text)).toContain('estimated →');
  expect(wrongTexts(texts, pictureLayout(WIDTH, 400, true, 26, 1).area, WIDTH)).toEqual([]);
});

it('nor does any of the spectrum, whatever rate is marked in it', () => {
  const frequency = Float64Array.from({ length: 200 }, (_, i) => 20 * 800 ** (i / 199));
  const sound = { frequency, levelDb: frequency.map((f) => -10 * Math.log10(f / 20)) };
  const { area } = pictureLayout(WIDTH, 240, false, undefined, 2);
  for (let rate = 22; rate < 4000; rate *= 1.13) {
    const marks = harmonicMarks(
      [
        { frequency: rate, name: 'firing rate', harmonics: 24 },
        { frequency: rate / 2, name: 'half the firing rate', harmonics: 1 }
      ],
      16000
    );
    const props = { sound, marks, reaches: 300, reachesText: 'too low for this speaker here', height: 240 };
    const { body } = render(SpectrumPicture, { props });
    expect(wrongTexts(textsOf(body), area, WIDTH), `${rate}`).toEqual([]);
    for (const name of ['firing rate', 'too low for this speaker here']) expect(body).toContain(name);
  }
});
