import { refusal } from '../../src/lib/acoustics/refusal.js';
import { checkSound } from '../../src/lib/sounds/check-sound.js';
import { type GeneratedSound, knobsOfKind, SOUND_KIND_NAMES } from '../../src/lib/sounds/kinds.js';
import type { SoundKnob } from '../../src/lib/sounds/knob.js';
import fc from 'fast-check';
import { LIMITS } from '../../src/lib/acoustics/mounts/check-installation.js';
import type { Outline } from '../../src/lib/acoustics/outline.js';
import type { Mount } from '../../src/lib/acoustics/mounts/mount.js';
import { type BlindRun, SAYINGS } from '../../src/lib/file/blind-run.js';
import type { Scene } from '../../src/lib/file/scene.js';
import { PLACE_KINDS } from '../../src/lib/sounds/places/place-spectra.js';
import { BENCH_VERSION } from '../../src/lib/file/versions/versions.js';
import { VOTE_STAGES, type VoteRound } from '../../src/lib/file/vote-round.js';
import type {
  BenchFile,
  BenchModel,
  BenchSound,
  BenchSpeaker,
  Setup
} from '../../src/lib/file/bench-file.js';

/** A number as JSON keeps it: finite, and no −0, which JSON writes as 0. */
const number = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((x) => (Object.is(x, -0) ? 0 : x));
const size = number(1e-3, 1);

/** Names as the file takes them: any signs on one line, but no control characters, and not blank. */
const name = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 40 })
  .filter((text) => /\S/.test(text) && text.length <= 80 && !/[\p{Cc}\u2028\u2029]/u.test(text));
/** Keys that mean something to JavaScript itself are refused; the rest is anybody's. */
const key = name.filter((text) => !['__proto__', 'constructor', 'prototype'].includes(text));

const outline: fc.Arbitrary<Outline> = fc.oneof(
  fc.record({ shape: fc.constantFrom('rectangle' as const, 'ellipse' as const), length: size, width: size }),
  fc.record({ shape: fc.constant('round' as const), diameter: size })
);

const share = number(0, 1);
/** Everything that a mount of any kind may have by its form. */
const openings = {
  leak: fc.oneof(
    fc.record({ gap: share, length: size, depth: size }),
    fc.record({ hole: size, depth: size })
  ),
  chassis: fc.record({ height: share, slit: share, ends: share, depth: size, fill: share }),
  grille: fc.record({
    holes: fc.integer({ min: 1, max: 99 }),
    diameter: size,
    thickness: size,
    cavity: size
  }),
  body: fc.record({ length: size, width: size, height: size, openings: share })
};
/** A mount with its own keys all there, and some of the others. */
const mountOf = (own: Record<string, fc.Arbitrary<unknown>>): fc.Arbitrary<Mount> =>
  fc
    .tuple(fc.record(own), fc.record(openings, { requiredKeys: [] }))
    .map(([bare, more]) => ({ ...bare, ...more }) as unknown as Mount);

const offset = fc.tuple(number(-1, 1), number(-1, 1));
const mount: fc.Arbitrary<Mount> = fc.oneof(
  mountOf({ kind: fc.constant('free') }),
  mountOf({
    kind: fc.constant('plate'),
    shape: fc.constant('rectangle'),
    length: size,
    width: size,
    offset
  }),
  mountOf({ kind: fc.constant('plate'), shape: fc.constant('round'), diameter: size, offset }),
  mountOf({
    kind: fc.constant('shell'),
    length: size,
    width: size,
    height: size,
    ends: fc.constantFrom('open', 'closed'),
    offset: number(-1, 1),
    loss: number(0, 0.2)
  }),
  mountOf({ kind: fc.constant('box'), length: size, width: size, depth: size }),
  mountOf({ kind: fc.constant('box'), length: size, width: size, depth: size, offset })
);

const motor = fc.record({
  mms: size,
  cms: size,
  bl: size,
  re: number(1, 100),
  qms: number(0.1, 20),
  xmax: size,
  ratedPower: size
});

const speaker: fc.Arbitrary<BenchSpeaker> = fc
  .record(
    { name, frame: outline, depth: size, cone: outline, bodyVolume: size, price: number(0, 1000) },
    { requiredKeys: ['name', 'frame', 'depth', 'cone', 'bodyVolume'] }
  )
  .chain((bare) =>
    fc.option(motor, { nil: null }).map((given) => (given ? { ...bare, motor: given } : bare))
  );

const second = number(0, 40_000);
/** Any value that a knob can be set to. */
function anyValue(knob: SoundKnob): fc.Arbitrary<unknown> {
  switch (knob.type) {
    case 'number':
      return knob.whole ? fc.integer({ min: knob.min, max: knob.max }) : number(knob.min, knob.max);
    case 'choice':
      return fc.constantFrom(...knob.options);
    case 'switch':
      return fc.boolean();
    case 'chord':
      return fc.array(fc.integer({ min: knob.lowest, max: knob.highest }), {
        minLength: knob.fewest,
        maxLength: knob.most
      });
  }
}

const arbitrarySound: fc.Arbitrary<GeneratedSound> = fc
  .constantFrom(...SOUND_KIND_NAMES)
  .chain((kind) =>
    fc.record({
      kind: fc.constant(kind),
      name,
      ...Object.fromEntries(Object.entries(knobsOfKind(kind)).map(([key, knob]) => [key, anyValue(knob)]))
    })
  )
  .map((sound) => sound as unknown as GeneratedSound)
  .filter((sound) => refusal(() => checkSound(sound)) === null);

const sound: fc.Arbitrary<BenchSound> = fc.oneof(
  arbitrarySound,
  fc
    .record({ kind: fc.constant('recording' as const), name: fc.string({ unit: 'binary', maxLength: 60 }) })
    .filter((one) => one.name.length <= 255),
  fc.record({
    kind: fc.constant('recording' as const),
    name: fc.constant('chuffs.wav'),
    from: second,
    until: second.map((s) => s + 40_001)
  })
);

/** A run of blind trials, whole or not. */
const blindRun: fc.Arbitrary<BlindRun> = fc
  .record({
    question: fc.constantFrom('same' as const, 'like' as const, 'better' as const),
    planned: fc.integer({ min: 1, max: 60 }),
    share: number(0, 1),
    seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
    mounts: fc.tuple(name, name),
    bench: name,
    ended: fc.option(fc.constantFrom('early' as const, 'changed' as const), { nil: undefined })
  })
  .map(({ question, planned, share, seed, mounts, bench, ended }) => ({
    question,
    mounts,
    places: [0, 0],
    sound: 'Single puffs',
    planned,
    seed,
    bench,
    answers: Array.from({ length: Math.floor(share * planned) }, (_, i) => ({
      behind: question === 'like' ? [0, 1, 0] : [i % 2, 1],
      said: SAYINGS[question][i % 2]
    })),
    ...(ended && { ended })
  }));
/** A scene of words, or of a mount whose speaker may be gone. */
const scene: fc.Arbitrary<Scene> = fc.oneof(
  fc.record({
    name,
    minutes: number(0.1, 60),
    shows: fc.constant('text' as const),
    text: name,
    notes: name
  }),
  fc.record({
    name,
    minutes: number(0.1, 60),
    shows: fc.constantFrom('curves' as const, 'tone' as const, 'puff' as const),
    heard: fc.record({
      setup: fc.record({
        name,
        speaker: key,
        mount,
        turn: fc.constantFrom(0 as const, 90 as const),
        notes: name
      }),
      sound,
      listener: fc.record({
        angleDeg: number(0, 90),
        plane: fc.constantFrom('width' as const, 'length' as const)
      }),
      model: fc.constantFrom('rule' as const, 'wave' as const),
      sameLoudness: fc.boolean()
    }),
    frequency: number(20, 20_000),
    notes: name
  })
);

/** A round of a hall vote, at any stage. */
const voteRound: fc.Arbitrary<VoteRound> = fc
  .record({
    question: name,
    mounts: fc.tuple(name, name, name),
    place: fc.constantFrom('hand' as const, 'layout' as const),
    noise: fc.option(fc.constantFrom(...PLACE_KINDS), { nil: undefined }),
    model: fc.constantFrom('rule' as const, 'wave' as const),
    sameLoudness: fc.boolean(),
    seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
    bench: name,
    stage: fc.constantFrom(...VOTE_STAGES),
    first: fc.integer({ min: 1, max: 999 }),
    seen: fc.option(fc.boolean(), { nil: undefined }),
    ended: fc.option(fc.constantFrom('early' as const, 'changed' as const), { nil: undefined })
  })
  .map(({ first, stage, seen, ended, noise, ...round }) => ({
    ...round,
    stage,
    places: [0, 0, 0],
    sound: 'Single puffs',
    day: '2026-11-30',
    hands: [first, stage === 'count' ? null : 0, 3],
    ...(noise && { noise }),
    ...(seen !== undefined && { seen }),
    ...(ended && stage !== 'shown' && { ended })
  }));

/** A model of a bench, possible or not. */
const stretch = fc.tuple(share, share);
const model: fc.Arbitrary<BenchModel> = fc.record(
  {
    name,
    length: size,
    width: size,
    height: size,
    cab: fc.record({ length: size, width: size }),
    above: size,
    chassis: fc.record({ height: share, slit: share, ends: share, depth: size }),
    obstacles: fc.array(
      fc.record({
        name,
        from: share,
        length: size,
        aside: number(-1, 1),
        width: size,
        above: share,
        height: size
      }),
      { maxLength: 6 }
    ),
    roof: stretch,
    floor: stretch,
    openings: share,
    sounds: fc.array(arbitrarySound, { maxLength: 3 })
  },
  { requiredKeys: ['name', 'length', 'width', 'height', 'above', 'obstacles', 'openings', 'sounds'] }
) as fc.Arbitrary<BenchModel>;

/** Any bench that a file can hold, as the reader gives it: every default filled in. Whether it can be built is open. */
export const arbitraryBench: fc.Arbitrary<BenchFile> = fc
  .uniqueArray(key, { minLength: 1, maxLength: 4 })
  .chain((keys) =>
    fc.record({
      keys: fc.constant(keys),
      speakers: fc.array(speaker, { minLength: keys.length, maxLength: keys.length }),
      setups: fc.array(
        fc.record<Setup, 'name' | 'speaker' | 'mount' | 'turn' | 'notes'>(
          {
            name,
            speaker: fc.constantFrom(...keys),
            mount,
            turn: fc.constantFrom(0 as const, 90 as const),
            notes: fc.string({ unit: 'grapheme', maxLength: 60 }),
            above: number(0, 1),
            facing: fc.constantFrom('up' as const, 'down' as const),
            wall: number(0.0001, 0.02),
            price: number(0, 1000),
            second: fc.record({
              at: fc.tuple(number(-1, 1), number(-1, 1)),
              reversed: fc.boolean(),
              wiring: fc.constantFrom('parallel' as const, 'series' as const)
            })
          },
          { requiredKeys: ['name', 'speaker', 'mount', 'turn', 'notes'] }
        ),
        { minLength: 1, maxLength: 6 }
      )
    })
  )
  .chain(({ keys, speakers, setups }) => {
    const place = fc.integer({ min: 0, max: setups.length - 1 });
    const [low, high] = LIMITS.temperatureC;
    return fc.record(
      {
        format: fc.constant('backwave-bench' as const),
        version: fc.constant(BENCH_VERSION),
        air: fc.record({ temperatureC: number(low, high) }),
        speakers: fc.constant(Object.fromEntries(keys.map((one, i) => [one, speakers[i]]))),
        setups: fc.constant(setups),
        listener: fc.record(
          {
            angleDeg: number(0, 90),
            plane: fc.constantFrom('width' as const, 'length' as const),
            board: fc.boolean()
          },
          { requiredKeys: ['angleDeg', 'plane'] }
        ),
        sound,
        view: fc.record(
          {
            heard: place,
            measuredAgainst: place,
            model: fc.constantFrom('rule' as const, 'wave' as const),
            inches: fc.boolean(),
            realLevel: fc.boolean(),
            sameLoudness: fc.boolean()
          },
          { requiredKeys: ['heard', 'measuredAgainst', 'model', 'inches', 'sameLoudness'] }
        ),
        drive: fc.oneof(
          fc.record({ volts: number(0.001, 100) }),
          fc.record({ watts: number(0.001, 100), into: number(0.1, 100) })
        ),
        amplifier: fc.record({ leastLoad: number(0.1, 100), power: number(0.001, 100) }),
        lift: fc.record({ gainDb: number(0, 18), below: number(50, 1000) }),
        trials: fc.array(blindRun, { maxLength: 3 }),
        script: fc.array(scene, { maxLength: 2 }),
        votes: fc.array(voteRound, { maxLength: 3 }),
        noise: fc.record({
          place: fc.constantFrom(...PLACE_KINDS),
          levelDb: number(10, 100),
          heard: fc.boolean()
        }),
        model
      },
      { requiredKeys: ['format', 'version', 'air', 'speakers', 'setups', 'listener', 'sound', 'view'] }
    );
  });
