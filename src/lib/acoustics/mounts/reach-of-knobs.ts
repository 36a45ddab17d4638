import type { Installation } from '../installation.js';
import { boardKnob } from './board-knob.js';
import { knobsOf, withKnob } from './size-knobs.js';

/** How many sizes between the smallest and the largest stand for the whole reach of the knobs. */
const STEPS = 4;

/**
 * Installations that stand for everything the knobs can reach from here: the speaker in the middle,
 * all sizes moved together from their least to their largest; over a board, a box as low as it can stand and whatever is open at its
 * back as high, where each is the louder. From the loudest of them the headroom is set.
 * That nothing in between is louder by more than the stated margin is checked with random sizes in the tests.
 */
export function reachOfKnobs(installation: Installation): Installation[] {
  const centred = { ...installation };
  // Where there is a second speaker the first one stays beside it.
  for (const { key } of installation.second ? [] : knobsOf(installation))
    if (key === 'offsetLength' || key === 'offsetWidth') centred.mount = withKnob(centred.mount, key, 0);
  const sizes = knobsOf(centred).filter(({ key }) => key !== 'offsetLength' && key !== 'offsetWidth');
  if (sizes.length === 0) return [atLoudestHeight(centred)];
  return Array.from({ length: STEPS }, (_, step) => {
    const share = step / (STEPS - 1);
    let mount = centred.mount;
    for (const { key, min, max } of sizes) mount = withKnob(mount, key, min * (max / min) ** share);
    return atLoudestHeight({ ...centred, mount });
  });
}

function atLoudestHeight(installation: Installation): Installation {
  const { board, mount } = installation;
  const height = boardKnob(installation);
  if (!board || !height) return installation;
  return { ...installation, board: { ...board, above: mount.kind === 'box' ? height.min : height.max } };
}
