import { thirdOctaveBands } from '../lib/numeric/third-octave-bands.js';
import { LIMITS } from '../lib/acoustics/mounts/check-installation.js';
import { DRIVE_LIMITS } from '../lib/acoustics/speaker/drive.js';
import { MEASURE_NAMES, type MeasureName } from '../lib/evaluation/fit/ranking.js';
import { FIELD_MODEL, MODEL_NAMES, models, USUAL_MODEL } from '../lib/evaluation/models.js';
import type { PredictionAsked } from '../lib/evaluation/prediction.js';
import type { Hertz } from '../lib/units.js';
import { readFlags } from './flags.mjs';
import { Refusal } from './refusal.mjs';

export const predictHelp = `npm run --silent predict -- FILE [flags]

Predicts every setup of a bench file (docs/file-format.md); FILE - reads it from stdin.

  --model rule|wave      rule: the rule of thumb, a first-order model (the default); wave: the wave solution, at any
                         angle, over a board as well, with the acoustic load of the cone
  --accuracy draft|full  how finely the wave solution is computed: full (the default), to 10 kHz, or draft, to 3 kHz
  --speaker full|ideal   full (the default): with the speaker's own response, 0 dB is its mid-band level in
                         an endless plate; ideal: the mount alone, 0 dB is the same cone in an endless plate
  --frequencies LIST     in Hz, separated by commas (third-octave midbands, 50 Hz … 16 kHz)
  --angle DEG            where one listens, in place of the file's listener.angleDeg: from straight in front of the
                         cone, with listener.board from straight up
  --plane length|width   the plane of that angle, in place of the file's listener.plane
  --drive VOLTS          volts (rms) at the speakers, in place of the file's drive: adds the level at the listener in
                         dB re 20 µPa (far away: at 1 m), the travel of the cone in m and the impedance in Ω
  --format json|csv      json is the default
  --fit                  tries every speaker in every way that fits into the file's model (docs/models/fitting.md) and
                         ranks them, by the wave solution; --accuracy draft is the default then
  --by MEASURE           what --fit ranks by: level (the default), deep, even, space, price or loudest
  --every-size           of boxes --fit tries every size, and not only those round the best
  --help                 this text
`;

/** What is asked for; null where the file decides. */
export interface PredictRequest extends PredictionAsked {
  file: string;
  /** What everything that fits is to be ranked by; null where the setups are to be predicted. */
  fitBy: MeasureName | null;
  /** Whether every size of the boxes is tried then. */
  everySize: boolean;
  format: 'json' | 'csv';
}

const MOST_FREQUENCIES = 10_000;
const FREQUENCY_LIMITS: readonly [Hertz, Hertz] = [0.001, 1_000_000];

/**
 * Reads the arguments of `predict`; null where only help is asked for.
 * @throws Refusal with one sentence
 */
export function predictRequest(args: string[]): PredictRequest | null {
  const { values, positionals } = readFlags(
    args,
    {
      model: { type: 'string' },
      accuracy: { type: 'string' },
      speaker: { type: 'string' },
      frequencies: { type: 'string' },
      angle: { type: 'string' },
      plane: { type: 'string' },
      drive: { type: 'string' },
      format: { type: 'string' },
      fit: { type: 'boolean' },
      by: { type: 'string' },
      'every-size': { type: 'boolean' },
      help: { type: 'boolean', short: 'h' }
    },
    { positionals: true }
  );
  if (values.help) return null;
  if (positionals.length !== 1)
    throw new Refusal(`give one bench file, or - for stdin, got ${positionals.length} (--help lists all)`);
  const fitBy = fitMeasureOf(values);
  const model = oneOf('model', values.model, MODEL_NAMES, fitBy === null ? USUAL_MODEL : FIELD_MODEL);
  if (models[model].accuracies.length === 0 && values.accuracy !== undefined)
    throw new Refusal('--accuracy is for --model wave only: the rule of thumb is a closed form');
  const speaker = oneOf('speaker', values.speaker, ['ideal', 'full'], 'full');
  if (speaker === 'ideal' && values.drive !== undefined)
    throw new Refusal(
      '--drive is for --speaker full only: ideal leaves out what a voltage does to the speaker'
    );
  return {
    file: positionals[0],
    fitBy,
    everySize: values['every-size'] === true,
    model,
    accuracy: oneOf('accuracy', values.accuracy, ['draft', 'full'], fitBy === null ? 'full' : 'draft'),
    speaker,
    frequency: frequenciesOf(values.frequencies),
    angleDeg: values.angle === undefined ? null : angleOf(values.angle),
    plane: values.plane === undefined ? null : oneOf('plane', values.plane, ['length', 'width'], 'width'),
    drive: values.drive === undefined ? null : numberWithin('drive', values.drive, DRIVE_LIMITS.volts, 'V'),
    format: oneOf('format', values.format, ['json', 'csv'], 'json')
  };
}

/** What `--fit` and what belongs to it say together. What belongs to single setups does not go with them. */
function fitMeasureOf(values: Partial<Record<string, string | boolean>>): MeasureName | null {
  if (!values.fit) {
    for (const flag of ['by', 'every-size'])
      if (values[flag] !== undefined) throw new Refusal(`--${flag} is for --fit only`);
    return null;
  }
  for (const flag of ['model', 'speaker', 'frequencies', 'angle', 'plane'])
    if (values[flag] !== undefined)
      throw new Refusal(
        `--${flag} does not go with --fit, which asks the wave solution where the file listens`
      );
  return oneOf('by', values.by as string | undefined, MEASURE_NAMES, 'level');
}

function oneOf<const T extends string>(
  flag: string,
  text: string | undefined,
  options: readonly T[],
  fallback: NoInfer<T>
): T {
  if (text === undefined) return fallback;
  const option = options.find((candidate) => candidate === text);
  if (option === undefined)
    throw new Refusal(`--${flag} must be ${options.join(' or ')}, got ${JSON.stringify(text.slice(0, 40))}`);
  return option;
}

function frequenciesOf(list: string | undefined): Hertz[] {
  if (list === undefined) return thirdOctaveBands().map(({ centre }) => centre);
  const texts = list.split(',');
  if (texts.length > MOST_FREQUENCIES)
    throw new Refusal(`--frequencies takes at most ${MOST_FREQUENCIES} frequencies, got ${texts.length}`);
  return texts.map((text) => numberWithin('frequencies', text, FREQUENCY_LIMITS, 'Hz'));
}

function angleOf(text: string): number {
  return numberWithin('angle', text, LIMITS.angleDeg, 'degrees');
}

function numberWithin(
  flag: string,
  text: string,
  [low, high]: readonly [number, number],
  unit: string
): number {
  const value = /^\s*[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?\s*$/i.test(text) ? Number(text) : NaN;
  if (value >= low && value <= high) return value;
  throw new Refusal(
    `--${flag} must be within ${low} … ${high} ${unit}, got ${JSON.stringify(text.slice(0, 40))}`
  );
}
