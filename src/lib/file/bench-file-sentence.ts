import type { BaseIssue } from 'valibot';
import { isJsonObject } from './json/json-object.js';
import { jsonPlace } from './json/json-place.js';
import { quoted } from './json/quoted.js';

/**
 * One plain sentence for what the schema found, an unknown key first: a mistyped key is most often also
 * the reason why another one is missing.
 */
export function benchFileSentence(issues: readonly BaseIssue<unknown>[]): string {
  const unknownKey = issues.find((issue) => issue.type === 'strict_object' && issue.expected === 'never');
  const issue = unknownKey ?? issues[0];
  const keys = issue.path?.map((item) => item.key) ?? [];
  if (issue === unknownKey)
    return `${whole(jsonPlace(keys.slice(0, -1)))} has an unknown key ${quoted(keys.at(-1))}`;
  if (issue.type === 'strict_object' && issue.message.startsWith('lacks '))
    return `${whole(jsonPlace(keys.slice(0, -1)))} ${issue.message}`;
  // Of an object as a whole its keys are told, not that it is one.
  if (issue.type === 'check' && isJsonObject(issue.input))
    return `${whole(jsonPlace(keys))} ${issue.message}`;
  const got = issue.input === undefined ? '' : `, got ${quoted(issue.input)}`;
  return `${whole(jsonPlace(keys))} ${issue.message}${got}`;
}

function whole(place: string): string {
  return place || 'the bench file';
}
