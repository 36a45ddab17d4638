import type { Air } from '../acoustics/air.js';
import type { Installation } from '../acoustics/installation.js';
import { hasOpenings } from '../acoustics/mounts/mount.js';
import { lossOf } from '../acoustics/mounts/loss.js';
import type { Listener } from '../acoustics/listener.js';
import { toEnd, type Steps } from './curve/steps.js';
import { solvingCurve } from './curve/wave-curve.js';
import { freeAirMass } from './field/free-air-mass.js';
import { hearWaves, heardResponse, type SolvedWaves, type WaveResponse } from './curve/heard-waves.js';
import { mountProblem, type WaveOptions } from './solve/mount-problem.js';

/** A mount solved once: every listener, grid and motor is read off it. */
export interface SolvedMount extends SolvedWaves {
  installation: Installation;
  air: Air;
}

/**
 * The wave solution: the response of a speaker in a mount by a boundary-element model of a rigid surface without
 * thickness with the cone as a piston in it (docs/models/wave-solution.md). The same signature, time factor and 0 dB as
 * `ruleOfThumb`: 0 dB is the same cone velocity (`ideal`) or the mid-band level of this speaker (`full`) in an endless
 * plate, on the axis, at the same distance.
 *
 * @param listener any angle, over a board from straight up; a distance of 0.01 m or more, measured from the middle of the cone, or far field
 * @param frequency Hz, each at least 0, any length; the response holds this same array as its grid
 * @throws RangeError for what `checkInstallation` refuses, for values beyond LIMITS, for a mount too large or too slender
 *   to be meshed, and for a moving mass below that of the air at the cone
 */
export function waveSolution(
  installation: Installation,
  air: Air,
  listener: Listener,
  frequency: Float64Array,
  speaker: 'ideal' | 'full' = 'full',
  options: WaveOptions = {}
): WaveResponse {
  return waveResponse(solveMount(installation, air, options), listener, frequency, speaker);
}

/** The long part of `waveSolution`: mesh, matrices and the solutions at as many frequencies as the curve needs. */
export function solveMount(installation: Installation, air: Air, options: WaveOptions = {}): SolvedMount {
  return { installation, air, ...toEnd(solvingWaves(installation, air, options)) };
}

/** `solveMount` in steps of one frequency or one set of matrices: gives the share that is done, and at the end the solution. */
export function* solvingWaves(
  installation: Installation,
  air: Air,
  options: WaveOptions = {}
): Steps<SolvedWaves> {
  const { problem, c, highest } = mountProblem(installation, air, options);
  yield 0;
  const airMass = freeAirMass(installation.speaker, air);
  const curve = yield* solvingCurve(problem, c, highest);
  return { highest, curve, airMass };
}

/**
 * What a solution depends on, as a text: two installations with the same key have the same one, whatever their motors. The body of a
 * speaker counts where air passes openings of the room that it is in.
 */
export function solutionKey(
  { speaker: { cone, frame, bodyVolume }, mount, turn, board, second }: Installation,
  air: Air,
  { accuracy = 'full', loss = lossOf(mount) }: WaveOptions = {}
): string {
  return JSON.stringify([
    cone,
    frame,
    mount,
    turn,
    air.temperatureC,
    accuracy,
    loss,
    board,
    second?.at,
    hasOpenings(mount) && bodyVolume
  ]);
}

/** The short part of `waveSolution`: what a listener hears, on any grid. */
export function waveResponse(
  mount: SolvedMount,
  listener: Listener,
  frequency: Float64Array,
  speaker: 'ideal' | 'full' = 'full'
): WaveResponse {
  return heardResponse(hearWaves(mount, listener), mount.installation, mount.air, frequency, speaker);
}
