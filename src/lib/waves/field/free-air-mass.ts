import type { Air } from '../../acoustics/air.js';
import { airDensity, soundSpeed } from '../../acoustics/air.js';
import type { Speaker } from '../../acoustics/speaker/speaker.js';
import type { Kilograms } from '../../units.js';
import { ACCURACY } from '../mesh/accuracy.js';
import { acousticLoad } from './acoustic-load.js';
import { mountMesh } from '../mesh/mount-mesh.js';
import { solveWave, waveProblem } from '../solve/wave-problem.js';

/**
 * The mass of air that moves with a cone in its bare frame, both faces, in the limit of low frequency: ρ·z·Sd² with
 * z = Za/(jωρ) of the potential flow. The moving mass that makers state contains it. A bare disc of radius a would
 * have (8/3)·ρ·a³ (H. Lamb, Hydrodynamics, 6th ed., art. 102, number from memory).
 */
export function freeAirMass(speaker: Speaker, air: Air): Kilograms {
  const installation = { speaker, mount: { kind: 'free' }, turn: 0 } as const;
  const { mesh, pistons } = mountMesh(installation, soundSpeed(air), ACCURACY.draft);
  const problem = waveProblem(mesh, pistons);
  return airDensity(air) * acousticLoad(problem, solveWave(problem, 0)).re * problem.pistons[0].area ** 2;
}
