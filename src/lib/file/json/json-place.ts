import { quoted } from './quoted.js';

/** Where in a JSON value something stands, as one would write it: `setups[1].mount`; '' is the whole. */
export function jsonPlace(keys: readonly unknown[]): string {
  return keys
    .map((key, i) => {
      if (typeof key === 'number') return `[${key}]`;
      const name = String(key);
      if (!/^[\p{L}_$][\p{L}\p{N}_$-]*$/u.test(name) || name.length > 40) return `[${quoted(name)}]`;
      return i === 0 ? name : `.${name}`;
    })
    .join('');
}
