import { outlineArea } from '../../acoustics/outline.js';
import {
  flankVolts,
  homeMeasurement,
  type HomeMeasurement,
  type HomeMethod,
  type HomeReading,
  type HomeReadings
} from '../../acoustics/speaker/home-measurement.js';
import { refusal } from '../../acoustics/refusal.js';
import { SPEAKERS } from '../../acoustics/speaker/speakers.js';
import { numberFrom } from '../../format/number-from.js';
import { errorsOf, HOME_FIELDS, USUAL_ERRORS, type ErrorKind } from './home-fields.js';
import type { SpeakerInHand } from './speaker-in-hand.svelte.js';

/** What one has read at home, and what it makes of the speaker. */
export class HomeBench {
  #inHand: SpeakerInHand;
  /** As they were typed, by the speaker they belong to. */
  #typed = $state.raw<Record<string, Partial<Record<HomeReading, string>>>>({});

  method = $state<HomeMethod>('added');
  /** How well one reads, in percent. */
  errors = $state.raw<Record<ErrorKind, number>>(USUAL_ERRORS);

  constructor(inHand: SpeakerInHand) {
    this.#inHand = inHand;
  }

  readonly typed: Partial<Record<HomeReading, string>> = $derived.by(
    () => this.#typed[this.#inHand.key] ?? {}
  );
  /** In SI; the cone is that of the drawing. */
  readonly readings: HomeReadings = $derived.by(() => {
    const readings: HomeReadings = { cone: outlineArea(this.#inHand.speaker.cone) };
    for (const [key, text] of Object.entries(this.typed) as [Exclude<HomeReading, 'cone'>, string][])
      readings[key] = numberFrom(text) / HOME_FIELDS[key].factor;
    return readings;
  });
  /** The voltage to look for on either side of the resonance; null until all is read that it takes, or where that cannot be. */
  readonly wanted: number | null = $derived.by(() => {
    const { coil, resistor, speakerVolts, resistorVolts } = this.readings;
    if (
      coil === undefined ||
      resistor === undefined ||
      speakerVolts === undefined ||
      resistorVolts === undefined
    )
      return null;
    let volts: number | null = null;
    refusal(() => (volts = flankVolts({ coil, resistor, speakerVolts, resistorVolts })));
    return volts;
  });
  /** What comes out of it, or the sentence why nothing does yet. */
  readonly measured: HomeMeasurement | string = $derived.by(() => {
    let measured: HomeMeasurement | null = null;
    const air = this.#inHand.bench.file.air;
    const sentence = refusal(() => {
      measured = homeMeasurement(this.method, this.readings, errorsOf(this.readings, this.errors), air);
    });
    return measured ?? sentence!;
  });

  get empty(): boolean {
    return Object.keys(this.typed).length === 0;
  }

  /** Notes a reading, or takes it off where nothing was typed. */
  enter(key: Exclude<HomeReading, 'cone'>, typed: string): string | null {
    const { [key]: before, ...rest } = this.typed;
    const text = typed.trim();
    const { name } = HOME_FIELDS[key];
    if (text !== '') {
      const number = numberFrom(text);
      if (Number.isNaN(number)) return `${name} must be a number`;
      if (!(number > 0 && number < Infinity)) return `${name} must be above 0, got ${text}`;
    } else if (before === undefined) return null;
    this.#typed = { ...this.#typed, [this.#inHand.key]: text === '' ? rest : { ...rest, [key]: text } };
    return null;
  }

  /** Says how well one reads something, in percent. */
  setError(kind: ErrorKind, typed: string): string | null {
    const number = numberFrom(typed);
    if (!(number >= 0 && number <= 50))
      return `an error of reading must be within 0 … 50 %, got ${typed.trim() || 'nothing'}`;
    this.errors = { ...this.errors, [kind]: number };
    return null;
  }

  clear(): void {
    this.#typed = { ...this.#typed, [this.#inHand.key]: {} };
  }

  /** Gives the speaker what was measured. */
  use(): string | null {
    if (typeof this.measured === 'string') return this.measured;
    const { mms, cms, bl, re, qms } = this.measured.figures;
    const { speaker } = this.#inHand;
    const { xmax, ratedPower } = speaker.motor ?? SPEAKERS.oval.motor;
    return this.#inHand.put({ ...speaker, motor: { mms, cms, bl, re, qms, xmax, ratedPower } });
  }
}
