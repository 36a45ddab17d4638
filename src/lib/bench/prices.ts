import { checkLength, checkWithin, LIMITS } from '../acoustics/limits.js';
import { BENCH_FILE_LIMITS } from '../file/bench-file-limits.js';
import type { BenchFile } from '../file/bench-file.js';
import type { Metres } from '../units.js';
import { speakersToChoose } from './speakers.js';

/**
 * The bench with another price of a speaker, for all mounts that have it; null is not told.
 *
 * @throws RangeError with one sentence beyond `BENCH_FILE_LIMITS.price`
 */
export function withSpeakerPrice(file: BenchFile, key: string, price: number | null): BenchFile {
  checkPrice(price);
  return {
    ...file,
    speakers: { ...file.speakers, [key]: told(speakersToChoose(file)[key], 'price', price) }
  };
}

/**
 * The bench with another price of a mount, beside its speakers; null is the usual one.
 *
 * @throws RangeError with one sentence beyond `BENCH_FILE_LIMITS.price`
 */
export function withMountPrice(file: BenchFile, at: number, price: number | null): BenchFile {
  checkPrice(price);
  return { ...file, setups: file.setups.with(at, told(file.setups[at], 'price', price)) };
}

/**
 * The bench with a mount of other walls; null is the usual thickness.
 *
 * @throws RangeError with one sentence beyond `LIMITS.wall`
 */
export function withWall(file: BenchFile, at: number, wall: Metres | null): BenchFile {
  if (wall !== null) checkLength('thickness of the wall', wall, LIMITS.wall);
  return { ...file, setups: file.setups.with(at, told(file.setups[at], 'wall', wall)) };
}

function checkPrice(price: number | null): void {
  if (price !== null) checkWithin('a price', price, BENCH_FILE_LIMITS.price);
}

/** A thing with another figure; with null nothing is told of it any more. */
function told<Key extends string, Thing extends { [key in Key]?: number }>(
  thing: Thing,
  key: Key,
  figure: number | null
): Thing {
  const changed: Thing = { ...thing, [key]: figure };
  if (figure === null) delete changed[key];
  return changed;
}
