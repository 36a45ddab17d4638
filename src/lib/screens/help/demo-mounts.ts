import type { Installation } from '../../acoustics/installation.js';
import type { Mount } from '../../acoustics/mounts/mount.js';
import { ruleFigures, type RuleFigures } from '../../acoustics/rule/rule-figures.js';
import { demoBench } from '../../file/demo-bench.js';
import { installationOf } from '../../file/installation-of.js';

/** A mount of the demo bench, which the explanation draws and takes its figures from, whatever stands on the shelf. */
export function demoMount(kind: Mount['kind']): { installation: Installation; figures: RuleFigures } {
  const bench = demoBench();
  const setup = bench.setups.find(({ mount }) => mount.kind === kind)!;
  const installation = installationOf(bench, setup);
  return { installation, figures: ruleFigures(installation, bench.air) };
}
