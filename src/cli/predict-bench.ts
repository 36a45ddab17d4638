import { checkInstallation } from '../lib/acoustics/check-installation.js';
import type { Installation } from '../lib/acoustics/installation.js';
import type { MountKind } from '../lib/acoustics/mount.js';
import type { Response } from '../lib/acoustics/response.js';
import { ruleOfThumb } from '../lib/acoustics/rule-of-thumb.js';
import type { BenchFile } from '../lib/bench/file/bench-file.js';
import { installationOf } from '../lib/bench/file/installation-of.js';
import type { Decibels, Degrees, Hertz, Radians } from '../lib/units.js';
import type { PredictRequest } from './predict-request.js';
import { Refusal } from './refusal.mjs';

/** What `predict` prints as JSON. */
export interface Prediction {
  model: 'rule';
  speaker: 'ideal' | 'full';
  angleDeg: Degrees;
  frequency: Hertz[];
  setups: SetupPrediction[];
}

export interface SetupPrediction {
  name: string;
  kind: MountKind;
  /** 20·log10|H|; null where H is 0. */
  levelDb: (Decibels | null)[];
  /** Within (−π, π]. */
  phaseRad: Radians[];
}

/**
 * Predicts every setup of a bench at the frequencies asked for, in the order asked for.
 * @throws Refusal with one sentence, naming the setup that cannot be built
 */
export function predictBench(bench: BenchFile, request: PredictRequest): Prediction {
  const { model, speaker, frequency } = request;
  const listener = {
    ...bench.listener,
    angleDeg: request.angleDeg ?? bench.listener.angleDeg,
    plane: request.plane ?? bench.listener.plane
  };
  // A response travels on an ascending grid, each frequency once; the answer is in the order of the question.
  const grid = Float64Array.from(new Set(frequency)).sort();
  const at = new Map([...grid].map((f, k) => [f, k]));
  const places = frequency.map((f) => at.get(f) ?? 0);
  const setups = bench.setups.map((setup, i) => {
    const installation = refusing(
      () => checked(installationOf(bench, setup, speaker)),
      `setups[${i}] (${setup.name}): `
    );
    const response = refusing(() => ruleOfThumb(installation, bench.air, listener, grid, speaker));
    return { name: setup.name, kind: setup.mount.kind, ...levelAndPhase(response, places) };
  });
  return { model, speaker, angleDeg: listener.angleDeg, frequency, setups };
}

function checked(installation: Installation): Installation {
  checkInstallation(installation);
  return installation;
}

/** A RangeError of the models is a sentence for the user. */
function refusing<T>(ask: () => T, before = ''): T {
  try {
    return ask();
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal(`${before}${error.message}`);
    throw error;
  }
}

function levelAndPhase(
  { re, im }: Response,
  places: number[]
): Pick<SetupPrediction, 'levelDb' | 'phaseRad'> {
  return {
    levelDb: places.map((k) => {
      const level = 20 * Math.log10(Math.hypot(re[k], im[k]));
      return Number.isFinite(level) ? level : null;
    }),
    phaseRad: places.map((k) => {
      const phase = Math.atan2(im[k], re[k]);
      return phase === -Math.PI ? Math.PI : phase;
    })
  };
}
