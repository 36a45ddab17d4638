import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the checkout, whatever folder a command was called from. */
export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');
