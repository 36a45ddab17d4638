import type * as v from 'valibot';
import { isJsonObject } from './json/json-object.js';

/** What of a valibot schema says where which key stands; the rest judges values. */
interface SchemaShape {
  type: string;
  entries?: Record<string, SchemaShape>;
  options?: readonly SchemaShape[];
  pipe?: readonly SchemaShape[];
  item?: SchemaShape;
  value?: SchemaShape;
  wrapped?: SchemaShape;
  literal?: unknown;
}

/**
 * The same value with the keys of every object in the order in which the schema lists them. Keys that the schema does not
 * know stay, at the end; the keys of a record keep their own order, which is the user's.
 */
export function inSchemaOrder(schema: v.GenericSchema, value: unknown): unknown {
  return ordered(schema as unknown as SchemaShape, value);
}

function ordered(schema: SchemaShape, value: unknown): unknown {
  if (schema.pipe) return schema.pipe.filter(isSchema).reduce((inner, part) => ordered(part, inner), value);
  if (schema.wrapped) return ordered(schema.wrapped, value);
  if (Array.isArray(value)) return schema.item ? value.map((one) => ordered(schema.item!, one)) : value;
  if (!isJsonObject(value)) return value;
  const { entries, options } = schema;
  if (entries) return entriesInOrder(entries, value);
  const option = options?.find((one) => fits(one, value));
  if (option) return ordered(option, value);
  if (schema.type !== 'record') return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, ordered(schema.value!, one)]));
}

function entriesInOrder(
  entries: Record<string, SchemaShape>,
  value: Readonly<Record<string, unknown>>
): object {
  const known = Object.entries(entries).filter(([key]) => value[key] !== undefined);
  const first = Object.fromEntries(known.map(([key, schema]) => [key, ordered(schema, value[key])]));
  return { ...first, ...value, ...first };
}

/** Whether an option of a choice is the one that the value takes: what it says of its kind and shape is so. */
function fits({ entries, options }: SchemaShape, value: Readonly<Record<string, unknown>>): boolean {
  if (options) return options.some((one) => fits(one, value));
  return Object.entries(entries ?? {}).every(([key, schema]) => {
    const { type, literal } = schema.wrapped ?? schema;
    return type !== 'literal' || value[key] === literal;
  });
}

/** A pipe holds schemas and the checks between them. */
function isSchema(part: SchemaShape & { kind?: string }): boolean {
  return part.kind === 'schema';
}
