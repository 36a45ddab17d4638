import type { BenchFile } from '../../file/bench-file.js';

/** What of a mount or a speaker nobody hears. */
const SILENT = { price: undefined, wall: undefined };

/** All on which depends what is compared, as a short mark: another one, and it is not the same bench any more (FNV-1a, forwards and backwards). */
export function runMark(file: BenchFile, places: readonly number[]): string {
  const { setups, speakers, air, listener, sound, view, lift } = file;
  const compared = places.map((place) => setups[place]);
  const text = JSON.stringify(
    [
      compared.map((setup) => setup && { ...setup, name: '', notes: '', ...SILENT }),
      compared.map((setup) => setup && { ...speakers[setup.speaker], ...SILENT }),
      air,
      listener,
      sound,
      view.model,
      ...(lift ? [lift] : [])
    ],
    inOrder
  );
  let [high, low] = [0x811c9dc5, 0x1b873593];
  for (let i = 0; i < text.length; i++) {
    high = Math.imul(high ^ text.charCodeAt(i), 0x01000193) >>> 0;
    low = Math.imul(low ^ text.charCodeAt(text.length - 1 - i), 0x01000193) >>> 0;
  }
  return high.toString(16).padStart(8, '0') + low.toString(16).padStart(8, '0');
}

/** The keys of every object in one order: a file that is read back may have them in another one. */
function inOrder(_: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}
