import { expect, it } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { firstWords } from '../../../../src/lib/screens/shelf/first-words.js';
import { MOUNT_DRAWER, setupOf } from '../../../../src/lib/screens/shelf/mount-drawer.js';

it('the first steps speak of the mount that is heard, and of the speaker alone in free air only', () => {
  const demo = demoBench();
  const [oval] = Object.keys(demo.speakers);
  const drawer = MOUNT_DRAWER.map((mount) => setupOf(mount, oval));
  for (const setups of [demo.setups, drawer.slice(0, 4), drawer.slice(4)]) {
    const bench = new Bench({ ...demo, setups, view: { ...demo.view, heard: 0, measuredAgainst: 0 } });
    for (const { index, setup } of bench.stands) {
      bench.hear(index);
      const said = firstWords(bench.heard);
      expect(said.includes('alone'), said).toBe(setup.mount.kind === 'free');
      if (setup.mount.kind !== 'free') expect(said).toBe(`This is the ${setup.name.toLowerCase()}.`);
    }
  }
});
