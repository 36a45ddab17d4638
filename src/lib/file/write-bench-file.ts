import { BENCH_FILE_LIMITS } from './bench-file-limits.js';
import { BenchFileError } from './bench-file-error.js';
import {
  BENCH_FORMAT,
  BENCH_VERSION,
  type BenchFile,
  type BenchSound,
  type BenchSpeaker,
  type Setup
} from './bench-file.js';
import { knobsOfKind } from '../sounds/kinds.js';
import { readBenchFile } from './read-bench-file.js';

/**
 * Writes a bench file: readable, always with the keys in the same order whatever order the value has, so
 * that equal benches make equal text. What comes out is read back first: a file that this program could
 * not open again is never written.
 * @throws BenchFileError with one sentence where the value is no valid bench.
 */
export function writeBenchFile(bench: BenchFile): string {
  const text = `${JSON.stringify(inOrder(bench), null, 2)}\n`;
  if (text.length > BENCH_FILE_LIMITS.characters)
    throw new BenchFileError(`this bench is too large to be saved: ${text.length} characters`);
  readBenchFile(text);
  return text;
}

/** The top level, speakers and setups in the order of docs/file-format.md; what is inside sorts itself. */
function inOrder(bench: BenchFile): unknown {
  const { air, speakers, setups, listener, sound, view } = bench;
  return {
    format: BENCH_FORMAT,
    version: BENCH_VERSION,
    air: ordered(air, ['temperatureC']),
    speakers: Object.fromEntries(Object.entries(speakers).map(([key, one]) => [key, speakerInOrder(one)])),
    setups: setups.map(setupInOrder),
    listener: ordered(listener, ['angleDeg', 'plane', 'distance']),
    sound: ordered(sound, soundKeys(sound)),
    view: ordered(view, ['heard', 'measuredAgainst', 'model', 'inches', 'sameLoudness'])
  };
}

function soundKeys(sound: BenchSound): string[] {
  const own = sound.kind === 'recording' ? ['from', 'until'] : Object.keys(knobsOfKind(sound.kind));
  return ['kind', 'name', ...own];
}

const sizes = ['kind', 'shape', 'length', 'width', 'height', 'diameter', 'depth', 'ends', 'offset'];

function speakerInOrder({ frame, cone, motor, ...rest }: BenchSpeaker): unknown {
  const motorKeys = ['mms', 'cms', 'bl', 're', 'qms', 'xmax', 'ratedPower'];
  return ordered(
    {
      ...rest,
      frame: ordered(frame, sizes),
      cone: ordered(cone, sizes),
      ...(motor && { motor: ordered(motor, motorKeys) })
    },
    ['name', 'frame', 'depth', 'cone', 'motor', 'bodyVolume']
  );
}

function setupInOrder({ mount, ...rest }: Setup): unknown {
  return ordered({ ...rest, mount: ordered(mount, sizes) }, ['name', 'speaker', 'mount', 'turn', 'notes']);
}

/** The same object with these keys first and in this order; unknown keys stay, so that reading back refuses them. */
function ordered(value: object, keys: string[]): object {
  const from = value as Record<string, unknown>;
  const known = keys.filter((key) => from[key] !== undefined).map((key) => [key, from[key]]);
  return { ...Object.fromEntries(known), ...from, ...Object.fromEntries(known) };
}
