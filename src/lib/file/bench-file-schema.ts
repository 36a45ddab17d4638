import * as v from 'valibot';
import { LIMITS } from '../acoustics/limits.js';
import { type Drive, DRIVE_LIMITS } from '../acoustics/speaker/drive.js';
import { LIFT_LIMITS, USUAL_BELOW } from '../acoustics/speaker/lift.js';
import { PLACE_KINDS, PLACE_LEVEL } from '../sounds/places/place-spectra.js';
import { BENCH_FORMAT, OPENING_MODEL } from './bench-file.js';
import { BENCH_FILE_LIMITS as limits } from './bench-file-limits.js';
import { blindRun } from './blind-run-schema.js';
import { listener } from './listener-schema.js';
import { model } from './model-schema.js';
import { listOf, modelName, name, noList, object, oneOf, place, truth, within } from './schema-parts.js';
import { scene } from './scene-schema.js';
import { setup } from './setup-schema.js';
import { sound } from './sound-schema.js';
import { speaker } from './speaker-schema.js';
import { BENCH_VERSION } from './versions/versions.js';
import { voteRound } from './vote-round-schema.js';

const drive = v.pipe(
  object({
    volts: v.optional(within(DRIVE_LIMITS.volts, 'V')),
    watts: v.optional(within(DRIVE_LIMITS.watts, 'W')),
    into: v.optional(within(DRIVE_LIMITS.into, 'Ω'))
  }),
  v.check(
    ({ volts, watts, into }) =>
      volts === undefined
        ? watts !== undefined && into !== undefined
        : watts === undefined && into === undefined,
    'must have volts, or watts and the load they go into'
  )
) as unknown as v.GenericSchema<unknown, Drive>;

const amplifier = object({
  leastLoad: within(DRIVE_LIMITS.leastLoad, 'Ω'),
  power: within(DRIVE_LIMITS.power, 'W')
});

const lift = object({
  gainDb: within(LIFT_LIMITS.gainDb, 'dB'),
  below: v.optional(within(LIFT_LIMITS.below, 'Hz'), USUAL_BELOW)
});

const noise = object({
  place: oneOf(PLACE_KINDS),
  levelDb: within(PLACE_LEVEL, 'dB'),
  heard: v.optional(truth, false)
});

/**
 * The bench file of the newest version as it may be written; what depends on its neighbours is filled in by
 * bench-defaults.ts. The order of the keys here is the order in which they are written (in-schema-order.ts).
 */
export const benchFileSchema = object({
  format: v.literal(BENCH_FORMAT, `must be "${BENCH_FORMAT}"`),
  version: v.literal(BENCH_VERSION, `must be ${BENCH_VERSION}`),
  air: v.optional(object({ temperatureC: v.optional(within(LIMITS.temperatureC, '°C'), 20) }), {}),
  speakers: v.pipe(v.unknown(), noList, v.record(name, speaker, 'must be an object')),
  setups: v.array(setup, 'must be a list'),
  listener: v.optional(listener, {}),
  drive: v.optional(drive),
  amplifier: v.optional(amplifier),
  lift: v.optional(lift),
  model: v.optional(model),
  sound: v.optional(sound, { kind: 'diesel' }),
  noise: v.optional(noise),
  view: v.optional(
    object({
      heard: v.optional(place, 0),
      measuredAgainst: v.optional(place, 0),
      model: v.optional(modelName, OPENING_MODEL),
      inches: v.optional(truth, false),
      realLevel: v.optional(truth),
      sameLoudness: v.optional(truth, false)
    }),
    {}
  ),
  trials: v.optional(listOf(blindRun, limits.trials)),
  script: v.optional(listOf(scene, limits.scenes)),
  votes: v.optional(listOf(voteRound, limits.votes))
});

/** A bench file of which every key is known and of its type, with the plain defaults in. */
export type CheckedBenchFile = v.InferOutput<typeof benchFileSchema>;
