import * as v from 'valibot';
import { expect, test } from 'vitest';
import { inSchemaOrder } from '../../../src/lib/file/in-schema-order.js';

const size = v.pipe(v.number(), v.finite());
const schema = v.pipe(
  v.unknown(),
  v.check(() => true),
  v.strictObject({
    first: v.optional(size, 0),
    things: v.array(
      v.variant('kind', [
        v.variant('shape', [
          v.strictObject({
            kind: v.literal('plate'),
            shape: v.optional(v.literal('square'), 'square'),
            side: size
          }),
          v.strictObject({ kind: v.literal('plate'), shape: v.literal('round'), diameter: size })
        ]),
        v.strictObject({
          kind: v.literal('box'),
          depth: size,
          at: v.optional(v.strictTuple([size, size]), [0, 0])
        })
      ])
    ),
    named: v.record(v.string(), v.strictObject({ a: size, b: size }))
  })
);

test('every object has its keys as the schema lists them, whichever option of a choice it is', () => {
  const value = {
    named: { z: { b: 2, a: 1 }, m: { a: 3, b: 4 } },
    things: [
      { diameter: 3, shape: 'round', kind: 'plate' },
      { side: 4, shape: 'square', kind: 'plate' },
      { at: [1, 2], depth: 5, kind: 'box' }
    ],
    first: 1
  };
  expect(JSON.stringify(inSchemaOrder(schema, value))).toBe(
    '{"first":1,"things":[{"kind":"plate","shape":"round","diameter":3},{"kind":"plate","shape":"square","side":4},' +
      '{"kind":"box","depth":5,"at":[1,2]}],"named":{"z":{"a":1,"b":2},"m":{"a":3,"b":4}}}'
  );
  expect(inSchemaOrder(schema, value)).toEqual(value);
});

test('what the schema does not know stays, behind what it knows', () => {
  const value = { extra: 1, things: [{ kind: 'horn', colour: 'red' }, 'text', null], first: 2 };
  expect(JSON.stringify(inSchemaOrder(schema, value))).toBe(
    '{"first":2,"things":[{"kind":"horn","colour":"red"},"text",null],"extra":1}'
  );
});
