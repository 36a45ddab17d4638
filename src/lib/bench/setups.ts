import type { BenchFile, Setup } from '../file/bench-file.js';

/** The bench with one more setup at a place, which is then heard; what is measured against stays the same setup. */
export function withSetup(file: BenchFile, setup: Setup, at: number): BenchFile {
  const { measuredAgainst } = file.view;
  return {
    ...file,
    setups: file.setups.toSpliced(at, 0, setup),
    view: { ...file.view, heard: at, measuredAgainst: measuredAgainst + (measuredAgainst >= at ? 1 : 0) }
  };
}

/** The bench without one setup; its neighbour is heard, and the first is measured against where it was the one. */
export function withoutSetup(file: BenchFile, at: number): BenchFile {
  const setups = file.setups.toSpliced(at, 1);
  const { measuredAgainst } = file.view;
  return {
    ...file,
    setups,
    view: {
      ...file.view,
      heard: Math.min(at, setups.length - 1),
      measuredAgainst: measuredAgainst === at ? 0 : measuredAgainst - (measuredAgainst > at ? 1 : 0)
    }
  };
}

/** The bench with one setup at another place; what is heard and measured against stays the same setup. */
export function withMoved(file: BenchFile, from: number, to: number): BenchFile {
  const order = file.setups.map((_, i) => i);
  order.splice(to, 0, ...order.splice(from, 1));
  return {
    ...file,
    setups: order.map((i) => file.setups[i]),
    view: {
      ...file.view,
      heard: order.indexOf(file.view.heard),
      measuredAgainst: order.indexOf(file.view.measuredAgainst)
    }
  };
}
