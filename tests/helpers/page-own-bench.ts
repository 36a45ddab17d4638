import type { Mount } from '../../src/lib/acoustics/mounts/mount.js';
import type { BenchFile } from '../../src/lib/file/bench-file.js';
import { demoBench } from '../../src/lib/file/demo-bench.js';
import { writeBenchFile } from '../../src/lib/file/write-bench-file.js';
import { usualSound } from '../../src/lib/sounds/roster.js';

const demo = demoBench();
/** By the rule of thumb, which is worked out at once; the wave solution is asked for where it is what is looked at. */
const byRule: BenchFile = { ...demo, view: { ...demo.view, model: 'rule' } };

/**
 * The mounts of the demo bench on a sound that is made in a hundredth of the time of its engine: single puffs. Behind the
 * plate, the shell and the box they are 5 or 6 dB louder than in free air.
 */
export const OWN_BENCH = writeBenchFile({ ...byRule, sound: usualSound('puff') });

/** The bench that one finds at first, with its engine, but by the rule of thumb. */
export const DEMO_BENCH = writeBenchFile(byRule);

const smallSetups = byRule.setups.map((setup) => {
  const { mount } = setup;
  if (mount.kind === 'plate' && mount.shape === 'rectangle')
    return { ...setup, mount: { ...mount, length: 0.05, width: 0.044 } };
  if (mount.kind === 'shell') return { ...setup, mount: { ...mount, length: 0.06, height: 0.025 } };
  return setup;
});

/** The usual bench with a plate and a shell that are hardly larger than the speaker: their wave solutions take a quarter of the time. */
export const SMALL_BENCH = writeBenchFile({ ...byRule, sound: usualSound('puff'), setups: smallSetups });

/** The mount of that bench with this numeral. */
export const smallMount = (numeral: number): Mount => smallSetups[numeral - 1].mount;

/** What a bench is called that nobody has named. */
export const OWN_NAME = 'My bench';

/**
 * Leaves a bench in the browser's store as an earlier visit would have left it, once. Runs in the page before anything
 * else: the store answers in the order in which it is asked.
 */
export function leaveBench({ text, name }: { text: string; name: string }): void {
  if (location.protocol === 'about:' || localStorage.getItem('backwave keeps a bench')) return;
  localStorage.setItem('backwave keeps a bench', 'yes');
  localStorage.setItem('backwave was seen here', 'yes');
  const opening = indexedDB.open('backwave');
  opening.onupgradeneeded = () => {
    const store = opening.result.createObjectStore('kept');
    store.put({ id: 'own', name, text, stamp: 'left', keptAt: Date.now() }, 'bench own');
    store.put('own', 'last');
  };
  opening.onsuccess = () => opening.result.close();
}
