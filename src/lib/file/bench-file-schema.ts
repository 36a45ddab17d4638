import * as v from 'valibot';
import { LIMITS } from '../acoustics/mounts/check-installation.js';
import type { Leak, Mount, Openings } from '../acoustics/mounts/mount.js';
import { type Drive, DRIVE_LIMITS } from '../acoustics/speaker/drive.js';
import { LIFT_LIMITS, USUAL_BELOW } from '../acoustics/speaker/lift.js';
import { MOST_OBSTACLES } from '../fitting/vehicle.js';
import type { GeneratedSound } from '../sounds/kinds.js';
import { PLACE_KINDS, PLACE_LEVEL } from '../sounds/places/place-spectra.js';
import { BENCH_FORMAT, type BenchSound } from './bench-file.js';
import { BENCH_FILE_LIMITS as limits } from './bench-file-limits.js';
import { soundEntries } from './sound-schema.js';
import { BENCH_VERSION } from './versions/versions.js';

/** The lower edge of a body over the board in HO (common practice), as with a shell. */
const USUAL_ABOVE = 0.014;

/**
 * Every message is the end of a sentence that begins with the place in the file (bench-file-sentence.ts).
 * An object takes its listed keys only.
 */
const strict = <E extends v.ObjectEntries>(entries: E) =>
  v.strictObject(entries, (issue) =>
    issue.received === 'undefined' ? `lacks ${issue.expected}` : 'must be an object'
  );

/** valibot takes a list for an object without keys; a bench file does not. */
const noList = v.check((input: unknown) => !Array.isArray(input), 'must be an object');
const object = <E extends v.ObjectEntries>(entries: E) => v.pipe(v.unknown(), noList, strict(entries));

const finite = v.pipe(v.number('must be a number'), v.finite('must be a finite number'));
const within = ([low, high]: readonly [number, number], unit: string) =>
  v.pipe(
    finite,
    v.check((x) => x >= low && x <= high, `must be within ${low} … ${high} ${unit}`)
  );
const place = v.pipe(
  finite,
  v.check((x) => Number.isInteger(x) && x >= 0, 'must be a whole number from 0')
);
const name = v.pipe(
  v.string('must be a text'),
  v.maxLength(limits.name, `must be at most ${limits.name} characters long`),
  v.regex(/\S/, 'must not be empty'),
  v.regex(/^[^\p{Cc}\u2028\u2029]*$/u, 'must be one line without control characters')
);
const oneOf = <const T extends readonly (string | number)[]>(options: T) =>
  v.picklist(options, `must be ${options.map((option) => JSON.stringify(option)).join(' or ')}`);

/** A choice between objects by one of their keys; `fallback` is taken where the key is absent. */
const outline = <S extends 'rectangle' | 'ellipse'>(fallback: S) => {
  const other = fallback === 'rectangle' ? 'ellipse' : 'rectangle';
  return v.pipe(
    v.unknown(),
    noList,
    v.variant(
      'shape',
      [
        strict({ shape: v.optional(v.literal(fallback), fallback), length: finite, width: finite }),
        strict({
          shape: v.literal(other as Exclude<'rectangle' | 'ellipse', S>),
          length: finite,
          width: finite
        }),
        strict({ shape: v.literal('round'), diameter: finite })
      ],
      choice
    )
  );
};

/** The message of a choice; which options there are, the issue itself lists as `("a" | "b")`. */
function choice(issue: v.BaseIssue<unknown>): string {
  if (issue.expected === 'Object') return 'must be an object';
  const options = (issue.expected?.match(/"\w+"/g) ?? []).join(' or ');
  return issue.input === undefined ? `is missing: it must be ${options}` : `must be ${options}`;
}

const pair = (input: unknown) => Array.isArray(input) && input.length === 2;
const offset = v.pipe(
  v.unknown(),
  v.check(pair, 'must be a list of two numbers'),
  v.strictTuple([finite, finite])
);

const leak = v.pipe(
  object({
    gap: v.optional(finite),
    length: v.optional(finite),
    hole: v.optional(finite),
    depth: v.optional(finite, 0.001)
  }),
  v.check(
    ({ gap, length, hole }) =>
      hole === undefined
        ? gap !== undefined && length !== undefined
        : gap === undefined && length === undefined,
    'must have a gap and a length, or a hole'
  )
) as unknown as v.GenericSchema<unknown, Leak>;

/** What any mount may have by its form; which may have which is asked when it is used. */
const openings = {
  leak: v.optional(leak),
  chassis: v.optional(
    object({
      height: finite,
      slit: finite,
      ends: v.optional(finite, 0),
      depth: v.optional(finite, 0.001),
      fill: v.optional(finite, 0)
    })
  ),
  grille: v.optional(
    object({ holes: finite, diameter: finite, thickness: v.optional(finite, 0.001), cavity: finite })
  ),
  body: v.optional(object({ length: finite, width: finite, height: finite, openings: finite }))
} satisfies Record<keyof Openings, unknown>;

const mounts = {
  free: strict({ kind: v.literal('free'), ...openings }),
  plate: v.variant(
    'shape',
    [
      strict({
        kind: v.literal('plate'),
        shape: v.optional(v.literal('rectangle'), 'rectangle'),
        length: finite,
        width: finite,
        offset: v.optional(offset, [0, 0]),
        ...openings
      }),
      strict({
        kind: v.literal('plate'),
        shape: v.literal('round'),
        diameter: finite,
        offset: v.optional(offset, [0, 0]),
        ...openings
      })
    ],
    choice
  ),
  shell: strict({
    kind: v.literal('shell'),
    length: finite,
    width: finite,
    height: finite,
    ends: v.optional(oneOf(['open', 'closed']), 'closed'),
    offset: v.optional(finite, 0),
    loss: v.optional(finite),
    ...openings
  }),
  box: strict({ kind: v.literal('box'), length: finite, width: finite, depth: finite, ...openings })
} satisfies Record<Mount['kind'], unknown>;

const mount = v.pipe(
  v.unknown(),
  noList,
  v.variant('kind', [mounts.free, mounts.plate, mounts.shell, mounts.box], choice)
);

const motor = object({
  mms: finite,
  cms: finite,
  bl: finite,
  re: finite,
  qms: finite,
  xmax: finite,
  ratedPower: finite
});

const price = v.optional(
  v.pipe(
    finite,
    v.check(
      (x) => x >= limits.price[0] && x <= limits.price[1],
      `must be within ${limits.price[0]} … ${limits.price[1]}`
    )
  )
);

const speaker = object({
  name: v.optional(name),
  frame: outline('rectangle'),
  depth: v.optional(finite),
  cone: v.optional(outline('ellipse')),
  motor: v.optional(motor),
  bodyVolume: v.optional(finite),
  price
});

const second = object({
  at: offset,
  reversed: v.optional(v.boolean('must be true or false'), false),
  wiring: v.optional(oneOf(['parallel', 'series']), 'parallel')
});

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

const setup = object({
  name: v.optional(name),
  speaker: v.optional(name),
  mount,
  turn: v.optional(oneOf([0, 90]), 0),
  above: v.optional(finite),
  facing: v.optional(oneOf(['up', 'down'])),
  second: v.optional(second),
  wall: v.optional(within(LIMITS.wall, 'm')),
  price,
  notes: v.optional(
    v.pipe(
      v.string('must be a text'),
      v.maxLength(limits.notes, `must be at most ${limits.notes} characters long`)
    ),
    ''
  )
});

const generated = soundEntries(name).map(strict);
const generatedSound = v.pipe(
  v.unknown(),
  noList,
  v.variant('kind', generated as v.VariantOptions<'kind'>, choice)
) as unknown as v.GenericSchema<unknown, GeneratedSound>;

/** Every generated sound, and the user's own file. */
const sounds = [
  ...generated,
  strict({
    kind: v.literal('recording'),
    name: v.pipe(v.string('must be a text'), v.maxLength(255, 'must be at most 255 characters long')),
    from: v.optional(within([0, 86400], 's')),
    until: v.optional(within([0, 86400], 's'))
  })
];
const sound = v.pipe(
  v.unknown(),
  noList,
  v.variant('kind', sounds as v.VariantOptions<'kind'>, choice)
) as unknown as v.GenericSchema<unknown, BenchSound>;

const noise = object({
  place: oneOf(PLACE_KINDS),
  levelDb: within(PLACE_LEVEL, 'dB'),
  heard: v.optional(v.boolean('must be true or false'), false)
});

const letters = ['same', 'different', 'A', 'B', 'C'] as const;
const blindRun = object({
  question: oneOf(['same', 'like', 'better']),
  mounts: v.array(name, 'must be a list'),
  places: v.array(place, 'must be a list'),
  sound: v.pipe(v.string('must be a text'), v.maxLength(255, 'must be at most 255 characters long')),
  planned: v.pipe(within([1, 60], 'trials'), place),
  seed: place,
  bench: name,
  answers: v.array(
    object({ behind: v.array(place, 'must be a list'), said: oneOf(letters) }),
    'must be a list'
  ),
  ended: v.optional(oneOf(['early', 'changed']))
});

const obstacle = object({
  name: v.optional(name, 'box'),
  from: finite,
  length: finite,
  aside: v.optional(finite, 0),
  width: finite,
  above: v.optional(finite, 0),
  height: finite
});

/** What of a model is possible is asked when it is fitted out (fitting/). */
const model = object({
  name: v.optional(name, 'My model'),
  length: finite,
  width: finite,
  height: finite,
  cab: v.optional(object({ length: finite, width: finite })),
  above: v.optional(finite, USUAL_ABOVE),
  chassis: v.optional(
    object({
      height: finite,
      slit: v.optional(finite, 0.001),
      ends: v.optional(finite, 0.001),
      depth: v.optional(finite, 0.001)
    })
  ),
  obstacles: v.optional(
    v.pipe(
      v.array(obstacle, 'must be a list'),
      v.maxLength(MOST_OBSTACLES, `must be at most ${MOST_OBSTACLES} boxes`)
    ),
    []
  ),
  roof: v.optional(offset),
  floor: v.optional(offset),
  openings: v.optional(finite, 0),
  sounds: v.optional(
    v.pipe(
      v.array(generatedSound, 'must be a list'),
      v.maxLength(limits.modelSounds, `must be at most ${limits.modelSounds} sounds`)
    ),
    []
  )
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
  listener: v.optional(
    object({
      angleDeg: v.optional(within(LIMITS.angleDeg, 'degrees'), 0),
      plane: v.optional(oneOf(['length', 'width']), 'width'),
      distance: v.optional(within(LIMITS.distance, 'm')),
      board: v.optional(v.boolean('must be true or false'))
    }),
    {}
  ),
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
      model: v.optional(oneOf(['rule', 'wave']), 'wave'),
      inches: v.optional(v.boolean('must be true or false'), false),
      realLevel: v.optional(v.boolean('must be true or false')),
      sameLoudness: v.optional(v.boolean('must be true or false'), false)
    }),
    {}
  ),
  trials: v.optional(
    v.pipe(
      v.array(blindRun, 'must be a list'),
      v.maxLength(limits.trials, `must be at most ${limits.trials}`)
    )
  )
});

/** A bench file of which every key is known and of its type, with the plain defaults in. */
export type CheckedBenchFile = v.InferOutput<typeof benchFileSchema>;
