import { BENCH_FILE_LIMITS } from '../../file/bench-file-limits.js';

/** What a bench is called that nobody has named. */
export const UNNAMED = 'My bench';

/** The template that every bench starts from; it is never written over. */
export const DEMO_NAME = 'The demo bench';
/** The other one: the same line on its layout. */
export const LAYOUT_DEMO_NAME = 'The demo on the layout';

/** A name on one line, without control characters, as long as names may be; '' where nothing is left. */
export function cleanName(name: string): string {
  const line = name.replace(/[\p{Cc}\u2028\u2029]+/gu, ' ').trim();
  return Array.from(line).slice(0, BENCH_FILE_LIMITS.name).join('').trim();
}

/** The name, or the name with the first number from 2 that no other bench has. */
export function freeName(name: string, taken: readonly string[]): string {
  if (!taken.includes(name)) return name;
  // "Yard 2" beside "Yard" was numbered here; the number of "No. 41" is its own.
  const unnumbered = name.replace(/ \d+$/, '');
  const stem = Array.from(taken.includes(unnumbered) ? unnumbered : name)
    .slice(0, BENCH_FILE_LIMITS.name - 8)
    .join('');
  for (let number = 2; ; number++) if (!taken.includes(`${stem} ${number}`)) return `${stem} ${number}`;
}

/** What a bench file is called on disk: signs that some system refuses in a file name become a hyphen. */
export function fileNameOf(name: string): string {
  const safe = name
    .replace(/[\p{Cc}<>:"/\\|?*\u2028\u2029]+/gu, '-')
    .replace(/^[.\s]+|[.\s]+$/g, '')
    .slice(0, 100);
  return `${safe || 'bench'}.backwave.json`;
}

/** What a bench from a file is called: the file's name without its ending. */
export function nameOfFile(fileName: string): string {
  return cleanName(fileName.replace(/(\.backwave)?(\.json)?$/i, '')) || UNNAMED;
}

/** Whether a file that is let go over the page looks like a bench and not like a sound. */
export function looksLikeBench({ name, type }: { name: string; type: string }): boolean {
  return /\.(json|backwave)$/i.test(name) || type === 'application/json';
}
