import { jsonPlace } from './json-place.js';
import { quoted } from './quoted.js';

/** An object or a list that the scan is inside of. */
interface Level {
  /** The keys of an object so far; null in a list. */
  keys: Set<string> | null;
  /** The key or the index at which the scan is. */
  at: string | number;
}

/** Keys that mean something to JavaScript itself and never belong in a file. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * Looks through JSON text, without recursion, in one pass and before anything is parsed, for what parsing
 * would hide: nesting that is too deep, a key that stands twice in one object (the parser would keep the
 * last one silently), and keys such as `__proto__`. Text that is no JSON may pass here; the parser decides.
 * @param mostDepth how many objects and lists may stand inside each other
 * @throws RangeError naming the place.
 */
export function scanJson(text: string, mostDepth: number): void {
  const levels: Level[] = [];
  let lastString: string | null = null;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    const level = levels[levels.length - 1];
    if (sign === '"') {
      const end = endOfString(text, i);
      lastString = text.slice(i, end + 1);
      i = end;
    } else if (sign === '{' || sign === '[') {
      levels.push({ keys: sign === '{' ? new Set() : null, at: 0 });
      if (levels.length > mostDepth)
        throw new RangeError(`the bench file is nested more than ${mostDepth} levels deep; no bench is`);
    } else if (sign === '}' || sign === ']') levels.pop();
    else if (sign === ',' && level && !level.keys) level.at = Number(level.at) + 1;
    else if (sign === ':' && level?.keys && lastString !== null) {
      enterKey(level, levels, unescaped(lastString));
      lastString = null;
    }
  }
}

/** Where the string that opens at `start` closes; the end of the text if it never does. */
function endOfString(text: string, start: number): number {
  for (let i = start + 1; i < text.length; i++) {
    if (text[i] === '\\') i++;
    else if (text[i] === '"') return i;
  }
  return text.length;
}

function enterKey(level: Level, levels: Level[], key: string): void {
  const owner = jsonPlace(levels.slice(0, -1).map((outer) => outer.at)) || 'the bench file';
  if (FORBIDDEN.has(key)) throw new RangeError(`${owner} has an unknown key ${quoted(key)}`);
  if (level.keys?.has(key)) throw new RangeError(`${owner} has the key ${quoted(key)} twice`);
  level.keys?.add(key);
  level.at = key;
}

/** The string behind a JSON string literal; the literal itself where it is no valid one. */
function unescaped(literal: string): string {
  try {
    return JSON.parse(literal) as string;
  } catch {
    return literal;
  }
}
