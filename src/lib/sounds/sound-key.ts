import { type GeneratedSound, isMoving, type MovingSound } from './kinds.js';

/** All that a sound depends on, as a key: not its name, and not what its cord blows unless it blows it by itself. */
export function soundKey(sound: GeneratedSound): string {
  const bare = { ...sound, name: '' };
  return JSON.stringify(isMoving(bare) && !bare.runPast ? { ...bare, signal: '' } : bare);
}

/** What makes a machine the same one, wherever its lever stands and whether it drives by itself or not. */
export function machineKey(sound: MovingSound): string {
  return soundKey({ ...sound, notch: 0, runPast: false });
}
