import type { Stand } from '../../evaluation/stand.js';

/** The kinds of mount that a step of the explanation can let one hear. */
export type HeardMount = 'free air' | 'plate' | 'shell' | 'box' | 'chassis' | 'leak';

/** What one is told where the shelf has none of them. */
const MISSING: Record<HeardMount, string> = {
  'free air': 'the bare speaker',
  plate: 'a plate',
  shell: 'a shell with closed ends',
  box: 'a closed box',
  chassis: 'a shell with a chassis',
  leak: 'a box with a gap'
};

function isOne({ setup: { mount }, problem }: Stand, wanted: HeardMount): boolean {
  if (problem) return false;
  switch (wanted) {
    case 'free air':
      return mount.kind === 'free';
    case 'shell':
      return mount.kind === 'shell' && mount.ends === 'closed' && !mount.chassis;
    case 'chassis':
      return mount.chassis !== undefined;
    case 'box':
      return mount.kind === 'box' && !mount.leak;
    case 'leak':
      return mount.kind === 'box' && mount.leak !== undefined;
    default:
      return mount.kind === wanted;
  }
}

/** The first stand on the shelf that is one of these, or null. */
export function standOf(wanted: HeardMount, stands: readonly Stand[]): Stand | null {
  return stands.find((stand) => isOne(stand, wanted)) ?? null;
}

/** One sentence where something of what is to be heard does not stand on the shelf, else null. */
export function missingSentence(wanted: readonly HeardMount[], stands: readonly Stand[]): string | null {
  const missing = wanted.filter((one) => !standOf(one, stands)).map((one) => MISSING[one]);
  return missing.length === 0 ? null : `Put ${missing.join(' and ')} on the shelf to hear this.`;
}
