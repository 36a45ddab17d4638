import * as v from 'valibot';
import { choice, finite, name, noList, object, price, strict } from './schema-parts.js';

/** An outline; `fallback` is the shape of one that says none. */
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

const motor = object({
  mms: finite,
  cms: finite,
  bl: finite,
  re: finite,
  qms: finite,
  xmax: finite,
  ratedPower: finite
});

export const speaker = object({
  name: v.optional(name),
  frame: outline('rectangle'),
  depth: v.optional(finite),
  cone: v.optional(outline('ellipse')),
  motor: v.optional(motor),
  bodyVolume: v.optional(finite),
  price
});
