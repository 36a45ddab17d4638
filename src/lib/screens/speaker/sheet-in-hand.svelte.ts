import { outlineArea, type Outline } from '../../acoustics/outline.js';
import { completeSheet } from '../../acoustics/speaker/complete-sheet.js';
import { readSheet, type SheetReading } from '../../acoustics/speaker/read-sheet.js';
import type { Sheet, SheetFigure } from '../../acoustics/speaker/sheet-relations.js';
import type { Motor } from '../../acoustics/speaker/speaker.js';
import { SPEAKERS } from '../../acoustics/speaker/speakers.js';
import type { BenchSpeaker } from '../../file/bench-file.js';
import { numberFrom } from '../../format/number-from.js';
import { inSi, SHEET_FIELDS, SENSITIVITY_AT, type SensitivityAt, type SheetKey } from './sheet-fields.js';
import type { SpeakerInHand } from './speaker-in-hand.svelte.js';

/** What one has typed of a maker's sheet, and what it says. */
export class SheetInHand {
  #inHand: SpeakerInHand;
  /** As they were typed, by the speaker they belong to. */
  #typed = $state.raw<Record<string, Partial<Record<SheetKey, string>>>>({});
  /** What is missing is taken from the speaker as it stands. */
  completed = $state(false);
  /** How the maker drove it for the sensitivity, and from how far. */
  at = $state.raw<SensitivityAt>(SENSITIVITY_AT[0]);
  distance = $state(1);

  constructor(inHand: SpeakerInHand) {
    this.#inHand = inHand;
  }

  readonly typed: Partial<Record<SheetKey, string>> = $derived.by(() => this.#typed[this.#inHand.key] ?? {});
  /** What stands on the sheet, in SI, and the area of the cone as it is drawn where the sheet has none. */
  readonly given: Sheet = $derived.by(() => {
    const sheet: Sheet = { sd: outlineArea(this.#inHand.speaker.cone) };
    for (const [key, typed] of Object.entries(this.typed) as [SheetKey, string][])
      Object.assign(sheet, inSi(key, numberFrom(typed), this.at, this.distance));
    return sheet;
  });
  readonly taken: SheetFigure[] = $derived.by(() =>
    this.completed && this.#inHand.speaker.motor
      ? completeSheet(this.given, this.#inHand.speaker.motor, this.#inHand.bench.file.air)
      : []
  );
  readonly reading: SheetReading = $derived.by(() => {
    const motor = this.#inHand.speaker.motor;
    const more = Object.fromEntries(this.taken.map((figure) => [figure, motor![figure as keyof Motor]]));
    return readSheet({ ...this.given, ...more }, this.#inHand.bench.file.air);
  });

  get empty(): boolean {
    return Object.keys(this.typed).length === 0;
  }

  /** Writes a figure on the sheet, or takes it off where nothing was typed. */
  enter(key: SheetKey, typed: string): string | null {
    const { [key]: before, ...rest } = this.typed;
    const text = typed.trim();
    const { name, any } = SHEET_FIELDS[key];
    if (text !== '') {
      const number = numberFrom(text);
      if (Number.isNaN(number)) return `${name} must be a number`;
      if (!Number.isFinite(number) || !(any || number > 0)) return `${name} must be above 0, got ${text}`;
    } else if (before === undefined) return null;
    this.completed = false;
    this.#typed = { ...this.#typed, [this.#inHand.key]: text === '' ? rest : { ...rest, [key]: text } };
    return null;
  }

  clear(): void {
    this.completed = false;
    this.#typed = { ...this.#typed, [this.#inHand.key]: {} };
  }

  /** Gives the speaker what the sheet says; its cone grows or shrinks to the area that the sheet has. */
  use(): string | null {
    const { known } = this.reading;
    const { speaker } = this.#inHand;
    const { mms, cms, bl, re, qms, sd } = known as Required<Sheet>;
    const { xmax, ratedPower } = speaker.motor ?? SPEAKERS.oval.motor;
    const used: BenchSpeaker = {
      ...speaker,
      cone: this.typed.sd === undefined ? speaker.cone : grown(speaker.cone, sd),
      motor: { mms, cms, bl, re, qms, xmax, ratedPower }
    };
    return this.#inHand.put(used);
  }
}

/** The same shape with another area. */
function grown(outline: Outline, area: number): Outline {
  const by = Math.sqrt(area / outlineArea(outline));
  return outline.shape === 'round'
    ? { ...outline, diameter: outline.diameter * by }
    : { ...outline, length: outline.length * by, width: outline.width * by };
}
