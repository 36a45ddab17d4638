import { driveVolts } from '../../acoustics/speaker/drive.js';
import type { Speaker } from '../../acoustics/speaker/speaker.js';
import type { BenchFile, BenchModel } from '../../file/bench-file.js';
import type { GeneratedSound } from '../../sounds/kinds.js';
import type { Hertz } from '../../units.js';
import type { TriedSound, TriedWith } from './measures.js';

/** Volts at all speakers where neither the file nor the question says a drive. */
const USUAL_VOLTS = 1;

/** Volts (rms) of the sound that every candidate of a bench gets. */
export function triedVolts({ drive }: Pick<BenchFile, 'drive'>): number {
  return drive ? driveVolts(drive) : USUAL_VOLTS;
}

/** The sounds that the model makes, or the one on the bench. */
export function soundsOf({ sound }: Pick<BenchFile, 'sound'>, model: BenchModel): GeneratedSound[] {
  if (model.sounds.length > 0) return model.sounds;
  if (sound.kind === 'recording')
    throw new RangeError('a recording is not in the file: say which sounds the model makes ("model.sounds")');
  return [sound];
}

/** What all candidates of a bench are tried with. */
export function triedWith(
  bench: Pick<BenchFile, 'air' | 'listener' | 'amplifier' | 'lift' | 'setups' | 'speakers' | 'view'>,
  drawer: Readonly<Record<string, Speaker>>,
  sounds: readonly TriedSound[],
  volts: number,
  sampleRate: Hertz
): TriedWith {
  const { air, listener, amplifier, lift, setups, view } = bench;
  // One without motor values has no level of its own: any of the drawer will do.
  const against = drawer[setups[view.measuredAgainst].speaker] ?? Object.values(drawer)[0];
  const before = { amplifier: amplifier ?? null, lift: lift ?? null };
  return { air, listener, sounds, sampleRate, volts, ...before, against };
}
