import type { SpeedCase } from './speed-case.js';

const files = import.meta.glob<SpeedCase[]>('./*.speed.ts', { eager: true, import: 'default' });

/** Every case of every `.speed.ts` file beside this one, loaded at once: what they share is read a single time. */
export const cases = Object.values(files).flat();

export { reference } from './reference.js';
