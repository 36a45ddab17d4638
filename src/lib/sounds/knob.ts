/** What a number on a knob counts; it says how the page writes it. Values are SI, shares are 0 … 1. */
export type SoundUnit =
  | 'count'
  | 'rpm'
  | 'share'
  | 'Hz'
  | 'perSecond'
  | 'perMinute'
  | 's'
  | 'm'
  | 'm/s'
  | 'cents'
  | 'notch'
  | 'seed';

/** A number within a range. `whole` numbers have nothing between their steps. */
export interface NumberKnob {
  type: 'number';
  /** What it is called in a sentence: "driver diameter". */
  name: string;
  unit: SoundUnit;
  min: number;
  max: number;
  step: number;
  usual: number;
  whole?: true;
}

export interface ChoiceKnob {
  type: 'choice';
  name: string;
  options: readonly string[];
  usual: string;
}

export interface SwitchKnob {
  type: 'switch';
  name: string;
  usual: boolean;
}

/** Notes in semitones from A = 440 Hz, equal temperament: f = 440·2^(n/12) (ISO 16:1975). */
export interface ChordKnob {
  type: 'chord';
  name: string;
  fewest: number;
  most: number;
  lowest: number;
  highest: number;
  usual: readonly number[];
}

export type SoundKnob = NumberKnob | ChoiceKnob | SwitchKnob | ChordKnob;
export type SoundKnobs = Readonly<Record<string, SoundKnob>>;

type ValueOf<K> = K extends { type: 'number' }
  ? number
  : K extends { type: 'choice'; options: readonly (infer Option)[] }
    ? Option
    : K extends { type: 'switch' }
      ? boolean
      : readonly number[];

/** The values that a set of knobs can take: what a bench file holds of a sound, beside its kind and name. */
export type KnobValues<K extends SoundKnobs> = { [P in keyof K]: ValueOf<K[P]> };

/** A share, 0 … 1. */
export function shareKnob(name: string, usual: number): NumberKnob {
  return { type: 'number', name, unit: 'share', min: 0, max: 1, step: 0.01, usual };
}

/** What makes a sound an individual: the seed of its chance. */
export function seedKnob(usual: number): NumberKnob {
  return { type: 'number', name: 'individual', unit: 'seed', min: 0, max: 9999, step: 1, usual, whole: true };
}

/** Every knob where it usually stands. */
export function usualValues<K extends SoundKnobs>(knobs: K): KnobValues<K> {
  return Object.fromEntries(
    Object.entries(knobs).map(([key, { usual }]) => [key, usual])
  ) as unknown as KnobValues<K>;
}

/** What is wrong with a value: the end of a sentence that begins with the knob's name, and what it got. */
export interface KnobFault {
  must: string;
  got: unknown;
}

/**
 * Refuses what a knob cannot be set to.
 * @throws RangeError with a sentence that names the knob, its range and what it got
 */
export function checkKnobs(knobs: SoundKnobs, values: object): void {
  for (const [key, knob] of Object.entries(knobs)) {
    const fault = knobFault(knob, (values as Record<string, unknown>)[key]);
    if (fault) throw new RangeError(`${knob.name} ${fault.must}, got ${String(fault.got)}`);
  }
}

/** What is wrong with a value for a knob; null where nothing is. */
export function knobFault(knob: SoundKnob, value: unknown): KnobFault | null {
  switch (knob.type) {
    case 'number': {
      const { min, max, whole } = knob;
      const fits =
        typeof value === 'number' && value >= min && value <= max && (!whole || Number.isInteger(value));
      const must = `must be ${whole ? 'a whole number ' : ''}within ${min} … ${max}`;
      return fits ? null : { must, got: value };
    }
    case 'choice': {
      const must = `must be ${knob.options.map((option) => `"${option}"`).join(' or ')}`;
      return knob.options.includes(value as string) ? null : { must, got: value };
    }
    case 'switch':
      return typeof value === 'boolean' ? null : { must: 'must be true or false', got: value };
    case 'chord': {
      const { fewest, most, lowest, highest } = knob;
      const notes: readonly unknown[] = Array.isArray(value) ? value : [];
      if (notes.length < fewest || notes.length > most)
        return { must: `must have ${fewest} … ${most} notes`, got: notes.length };
      const fits = (note: unknown): boolean =>
        typeof note === 'number' && Number.isInteger(note) && note >= lowest && note <= highest;
      const must = `must be whole semitones within ${lowest} … ${highest}`;
      return notes.every(fits) ? null : { must, got: notes.find((note) => !fits(note)) };
    }
  }
}
