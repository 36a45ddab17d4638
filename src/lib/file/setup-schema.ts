import * as v from 'valibot';
import type { Leak, Mount, Openings } from '../acoustics/mounts/mount.js';
import { LIMITS } from '../acoustics/limits.js';
import { BENCH_FILE_LIMITS as limits } from './bench-file-limits.js';
import {
  choice,
  finite,
  name,
  noList,
  object,
  oneOf,
  price,
  strict,
  text,
  truth,
  twoNumbers,
  within
} from './schema-parts.js';

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
        offset: v.optional(twoNumbers, [0, 0]),
        ...openings
      }),
      strict({
        kind: v.literal('plate'),
        shape: v.literal('round'),
        diameter: finite,
        offset: v.optional(twoNumbers, [0, 0]),
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
  box: strict({
    kind: v.literal('box'),
    length: finite,
    width: finite,
    depth: finite,
    offset: v.optional(twoNumbers),
    ...openings
  })
} satisfies Record<Mount['kind'], unknown>;

const mount = v.pipe(
  v.unknown(),
  noList,
  v.variant('kind', [mounts.free, mounts.plate, mounts.shell, mounts.box], choice)
);

const second = object({
  at: twoNumbers,
  reversed: v.optional(truth, false),
  wiring: v.optional(oneOf(['parallel', 'series']), 'parallel')
});

export const setup = object({
  name: v.optional(name),
  speaker: v.optional(name),
  mount,
  turn: v.optional(oneOf([0, 90]), 0),
  above: v.optional(finite),
  facing: v.optional(oneOf(['up', 'down'])),
  second: v.optional(second),
  wall: v.optional(within(LIMITS.wall, 'm')),
  price,
  notes: v.optional(text(limits.notes), '')
});
