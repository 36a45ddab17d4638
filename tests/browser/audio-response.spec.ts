import { expect, test } from '@playwright/test';
import { close } from '../helpers/close.js';
import { DEMO } from '../helpers/demo-installations.js';
import { sharedHarness } from '../helpers/harness.js';

type Offline = typeof import('./harness/offline.js');
const offline = sharedHarness<Offline>('offline');

for (const mount of Object.keys(DEMO))
  for (const kind of ['impulse', 'noise'] as const)
    test(`${mount}: the branch renders the computed response (${kind})`, async () => {
      const compared = await offline().branchAndResponse(mount, kind, 48000);
      expect(compared.length).toBeGreaterThan(180);
      for (const { frequency, got, expected } of compared)
        close(got, expected, { abs: 0.1, because: `what is heard is what is drawn, at ${frequency} Hz` });
    });

for (const [mount, listener] of [
  ['flat plate', { angleDeg: 0, plane: 'width' }],
  ['cab body', { angleDeg: 0, plane: 'width' }],
  ['cab body', { angleDeg: 60, plane: 'width', distance: 0.6 }],
  ['closed box', { angleDeg: 0, plane: 'width' }]
] as const)
  test(`${mount}: the branch renders the solved response, heard at ${listener.angleDeg}°`, async () => {
    const compared = await offline().branchAndWaves(mount, listener);
    for (const { frequency, got, expected } of compared)
      if (frequency >= 80 && frequency <= 10_000)
        close(got, expected, { abs: 0.25, because: `what is heard is what is solved, at ${frequency} Hz` });
  });

test('the branch renders the computed response at another sample rate too', async () => {
  for (const { frequency, got, expected } of await offline().branchAndResponse(
    'closed box',
    'impulse',
    44100
  ))
    close(got, expected, {
      abs: 0.1,
      because: `the filters are made for the context's rate, ${frequency} Hz`
    });
});

for (const corner of [500, 1351])
  test(`a first-order high-pass of ${corner} Hz agrees with a recursive filter`, async () => {
    const compared = await offline().branchAndRecursiveFilter(corner, 48000);
    for (const { frequency, got, expected } of compared.filter(({ frequency }) => frequency <= 4000))
      close(got, expected, {
        abs: 0.1,
        because: `the bilinear transform bends the scale by 2 % at 4 kHz; at ${frequency} Hz`
      });
  });
