import * as v from 'valibot';
import { BENCH_FILE_LIMITS as limits } from './bench-file-limits.js';
import { NAMED_MODELS } from './bench-file.js';

/**
 * Every message is the end of a sentence that begins with the place in the file (bench-file-sentence.ts).
 * An object takes its listed keys only.
 */
export const strict = <E extends v.ObjectEntries>(entries: E) =>
  v.strictObject(entries, (issue) =>
    issue.received === 'undefined' ? `lacks ${issue.expected}` : 'must be an object'
  );

/** valibot takes a list for an object without keys; a bench file does not. */
export const noList = v.check((input: unknown) => !Array.isArray(input), 'must be an object');
export const object = <E extends v.ObjectEntries>(entries: E) => v.pipe(v.unknown(), noList, strict(entries));

export const finite = v.pipe(v.number('must be a number'), v.finite('must be a finite number'));
/** Both ends are allowed. */
export const within = ([low, high]: readonly [number, number], unit = '') =>
  v.pipe(
    finite,
    v.check((x) => x >= low && x <= high, `must be within ${low} … ${high}${unit && ` ${unit}`}`)
  );
/** Counted from 0. */
export const place = v.pipe(
  finite,
  v.check((x) => Number.isInteger(x) && x >= 0, 'must be a whole number from 0')
);
export const text = (most: number) =>
  v.pipe(v.string('must be a text'), v.maxLength(most, `must be at most ${most} characters long`));
/** Of anything that is called by one line. */
export const name = v.pipe(
  text(limits.name),
  v.regex(/\S/, 'must not be empty'),
  v.regex(/^[^\p{Cc}\u2028\u2029]*$/u, 'must be one line without control characters')
);
export const oneOf = <const T extends readonly (string | number)[]>(options: T) =>
  v.picklist(options, `must be ${options.map((option) => JSON.stringify(option)).join(' or ')}`);

export const truth = v.boolean('must be true or false');
export const modelName = oneOf(NAMED_MODELS);

/** The message of a choice; which options there are, the issue itself lists as `("a" | "b")`. */
export function choice(issue: v.BaseIssue<unknown>): string {
  if (issue.expected === 'Object') return 'must be an object';
  const options = (issue.expected?.match(/"\w+"/g) ?? []).join(' or ');
  return issue.input === undefined ? `is missing: it must be ${options}` : `must be ${options}`;
}

export const twoNumbers = v.pipe(
  v.unknown(),
  v.check((input) => Array.isArray(input) && input.length === 2, 'must be a list of two numbers'),
  v.strictTuple([finite, finite])
);

/** A list of at most so many, called by `what` they are. */
export const listOf = <S extends v.GenericSchema>(item: S, most: number, what = '') =>
  v.pipe(v.array(item, 'must be a list'), v.maxLength(most, `must be at most ${most}${what && ` ${what}`}`));

/** In whatever money. */
export const price = v.optional(within(limits.price));
