import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { withMoved, withoutSetup, withSetup } from '../../../src/lib/bench/setups.js';

const place = fc.nat(3);
const bench = fc.tuple(place, place).map(([heard, measuredAgainst]) => {
  const file = demoBench();
  return { ...file, view: { ...file.view, heard, measuredAgainst } };
});

test('a mount put in is heard, and taking it off again leaves the shelf as it was', () => {
  fc.assert(
    fc.property(bench, fc.nat(4), (file, at) => {
      const more = withSetup(file, { ...file.setups[0], name: 'new' }, at);
      expect(more.setups[more.view.heard].name).toBe('new');
      expect(more.setups[more.view.measuredAgainst]).toBe(file.setups[file.view.measuredAgainst]);
      const back = withoutSetup(more, at);
      expect(back.setups).toEqual(file.setups);
      expect(back.view.measuredAgainst).toBe(file.view.measuredAgainst);
    })
  );
});

test('moving keeps all mounts, and what is heard and measured against', () => {
  fc.assert(
    fc.property(bench, place, place, (file, from, to) => {
      const moved = withMoved(file, from, to);
      expect(moved.setups[to]).toBe(file.setups[from]);
      expect(new Set(moved.setups)).toEqual(new Set(file.setups));
      expect(moved.setups[moved.view.heard]).toBe(file.setups[file.view.heard]);
      expect(moved.setups[moved.view.measuredAgainst]).toBe(file.setups[file.view.measuredAgainst]);
      expect(withMoved(moved, to, from)).toEqual(file);
    })
  );
});
