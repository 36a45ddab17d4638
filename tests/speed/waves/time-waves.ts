import { soundSpeed } from '../../../src/lib/acoustics/air.js';
import type { Listener } from '../../../src/lib/acoustics/listener.js';
import type { Installation } from '../../../src/lib/acoustics/installation.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { fftFrequencies } from '../../../src/lib/numeric/impulse-response.js';
import type { Metres } from '../../../src/lib/units.js';
import { ACCURACY, type AccuracyName } from '../../../src/lib/waves/mesh/accuracy.js';
import { solvingCurve } from '../../../src/lib/waves/curve/wave-curve.js';
import { freeAirMass } from '../../../src/lib/waves/field/free-air-mass.js';
import { heardResponse, hearWaves } from '../../../src/lib/waves/curve/heard-waves.js';
import { mountMesh } from '../../../src/lib/waves/mesh/mount-mesh.js';
import type { ShellMount } from '../../../src/lib/acoustics/mounts/mount.js';
import { USUAL_LOSS } from '../../../src/lib/acoustics/mounts/loss.js';
import { waveProblem } from '../../../src/lib/waves/solve/wave-problem.js';

/** The reference shell with its speaker off the middle by so much, and how finely it is solved. */
export interface ShellAsked {
  offset: Metres;
  accuracy: AccuracyName;
  /** Its lower edge so high over a board; in the hand unless told. */
  above?: Metres;
  /** With a chassis in it and a leak round the frame; neither unless told. */
  asItRuns?: boolean;
  /** A second speaker so far from the middle; none unless told. */
  second?: Metres;
}

/** One wave solution: its size, and its seconds. The parts add up to the whole. */
export interface WaveTimes {
  unknowns: number;
  frequencies: number;
  /** Mesh, matrices that do not depend on frequency, air mass of the bare speaker. */
  matrices: number;
  /** Matrices and solutions at all frequencies. */
  solving: number;
  /** Choice of the frequencies, fits, what one listener hears on 2049 frequencies. */
  interpolation: number;
  whole: number;
}

/** Inside 152 × 30 × 45 mm, closed ends, the oval speaker in the roof. */
export function referenceShell(
  offset: Metres,
  above?: Metres,
  asItRuns = false,
  second?: Metres
): Installation {
  const mount: ShellMount = {
    kind: 'shell',
    length: 0.152,
    width: 0.03,
    height: 0.045,
    ends: 'closed',
    offset,
    ...(asItRuns && {
      leak: { gap: 1e-4, length: 0.13, depth: 0.001 },
      chassis: { height: 0.01, slit: 0.001, ends: 0.002, depth: 0.001, fill: 0.3 }
    })
  };
  const board = above === undefined ? {} : { board: { above, facing: 'up' as const } };
  return {
    speaker: SPEAKERS.oval,
    mount,
    turn: 0,
    ...board,
    ...(second !== undefined && { second: { at: [second, 0], reversed: false, wiring: 'parallel' } })
  };
}

const AIR = { temperatureC: 20 };
const IN_FRONT: Listener = { angleDeg: 0, plane: 'width' };
const LAYOUT: Listener = { angleDeg: 60, plane: 'width', distance: 0.9, board: true };

/** The same steps as `waveSolution`, with a clock beside them. */
export function timeWaves({ offset, accuracy, above, asItRuns, second }: ShellAsked): WaveTimes {
  const installation = referenceShell(offset, above, asItRuns, second);
  const bins = fftFrequencies(4096, 48000);
  const c = soundSpeed(AIR);
  const begun = now();
  const { mesh, pistons, patches, chambers, highest } = mountMesh(installation, c, ACCURACY[accuracy]);
  const airMass = freeAirMass(installation.speaker, AIR);
  const problem = waveProblem(mesh, pistons, USUAL_LOSS, patches, chambers);
  const ready = now();
  const steps = solvingCurve(problem, c, highest);
  const seconds: number[] = [];
  let from = ready;
  let step = steps.next();
  for (; !step.done; step = steps.next()) {
    const to = now();
    seconds.push(to - from);
    from = to;
  }
  const listener: Listener = above === undefined ? IN_FRONT : LAYOUT;
  const heard = hearWaves({ highest, curve: step.value, airMass }, listener);
  heardResponse(heard, installation, AIR, bins);
  const done = now();
  // All frequencies cost the same; the few steps that are longer chose their frequency first.
  const solving = seconds.length * median(seconds, (s) => s);
  const whole = done - begun;
  const matrices = ready - begun;
  const { unknowns } = heard;
  return {
    unknowns,
    frequencies: seconds.length,
    matrices,
    solving,
    interpolation: whole - matrices - solving,
    whole
  };
}

/** The run of the median time of so many, and how long the first one took, before anything was compiled. */
export function typicalTimes(asked: ShellAsked, runs: number): WaveTimes & { first: number } {
  const all = Array.from({ length: runs }, () => timeWaves(asked));
  const typical = median(all, ({ whole }) => whole);
  return { ...typical, first: all[0].whole };
}

/** Whole times of one cone 40 mm off the middle and of two, 40 mm to either side: the shortest of so many, taken in turns. */
export function oneAndTwo(accuracy: AccuracyName, runs: number): { one: number; two: number } {
  let [one, two] = [Infinity, Infinity];
  for (let i = 0; i < runs; i++) {
    one = Math.min(one, timeWaves({ offset: -0.04, accuracy }).whole);
    two = Math.min(two, timeWaves({ offset: -0.04, second: 0.04, accuracy }).whole);
  }
  return { one, two };
}

function median<T>(values: readonly T[], by: (value: T) => number): T {
  return values.toSorted((a, b) => by(a) - by(b))[values.length >> 1];
}

function now(): number {
  return performance.now() / 1000;
}
