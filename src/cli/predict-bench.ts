import { soundSpeed } from '../lib/acoustics/air.js';
import { checkInstallation } from '../lib/acoustics/mounts/check-installation.js';
import type { MountKind } from '../lib/acoustics/mounts/mount.js';
import type { Response } from '../lib/acoustics/response.js';
import { ruleOfThumb } from '../lib/acoustics/rule/rule-of-thumb.js';
import type { BenchFile, Setup } from '../lib/file/bench-file.js';
import { installationOf } from '../lib/file/installation-of.js';
import type { Decibels, Degrees, Hertz, Radians } from '../lib/units.js';
import { ACCURACY, type AccuracyName } from '../lib/waves/mesh/accuracy.js';
import { mountMesh } from '../lib/waves/mesh/mount-mesh.js';
import { waveSolution } from '../lib/waves/wave-solution.js';
import type { PredictRequest } from './predict-request.js';
import { Refusal } from './refusal.mjs';

/** What `predict` prints as JSON. */
export interface Prediction {
  model: 'rule' | 'wave';
  /** Of the wave solution only. */
  accuracy?: AccuracyName;
  speaker: 'ideal' | 'full';
  angleDeg: Degrees;
  frequency: Hertz[];
  setups: SetupPrediction[];
}

export interface SetupPrediction {
  name: string;
  kind: MountKind;
  /** Of the wave solution only: up to where it was solved. */
  highest?: Hertz;
  /** 20·log10|H|; null where H is 0. */
  levelDb: (Decibels | null)[];
  /** Within (−π, π]. */
  phaseRad: Radians[];
  /** Of the wave solution only: the acoustic load of the cone, both faces, in Pa·s/m³. */
  load?: { re: number[]; im: number[] };
}

/**
 * Predicts every setup of a bench at the frequencies asked for, in the order asked for. All setups are checked
 * before the first is computed.
 * @throws Refusal with one sentence, naming the setup that cannot be built
 */
export function predictBench(bench: BenchFile, request: PredictRequest): Prediction {
  const { model, accuracy, speaker, frequency } = request;
  const listener = {
    ...bench.listener,
    angleDeg: request.angleDeg ?? bench.listener.angleDeg,
    plane: request.plane ?? bench.listener.plane
  };
  // A response travels on an ascending grid, each frequency once; the answer is in the order of the question.
  const grid = Float64Array.from(new Set(frequency)).sort();
  const at = new Map([...grid].map((f, k) => [f, k]));
  const places = frequency.map((f) => at.get(f) ?? 0);
  const installations = bench.setups.map((setup, i) =>
    refusing(
      () => {
        const installation = installationOf(bench, setup, speaker);
        checkInstallation(installation);
        if (model === 'wave') mountMesh(installation, soundSpeed(bench.air), ACCURACY[accuracy]);
        return installation;
      },
      nameOf(setup, i)
    )
  );
  const setups = bench.setups.map((setup, i): SetupPrediction => {
    const { name, mount } = setup;
    if (model === 'rule') {
      // what it can still refuse is where one listens
      const response = refusing(() => ruleOfThumb(installations[i], bench.air, listener, grid, speaker));
      return { name, kind: mount.kind, ...levelAndPhase(response, places) };
    }
    const response = refusing(
      () => waveSolution(installations[i], bench.air, listener, grid, speaker, { accuracy }),
      nameOf(setup, i)
    );
    const { highest, load } = response;
    const { re, im } = load;
    return {
      name,
      kind: mount.kind,
      highest,
      ...levelAndPhase(response, places),
      load: { re: places.map((k) => re[k]), im: places.map((k) => im[k]) }
    };
  });
  const solved = model === 'wave' ? { accuracy } : {};
  return { model, ...solved, speaker, angleDeg: listener.angleDeg, frequency, setups };
}

function nameOf({ name }: Setup, index: number): string {
  return `setups[${index}] (${name}): `;
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
