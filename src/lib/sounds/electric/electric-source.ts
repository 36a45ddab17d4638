import type { MovingSource } from '../sound-kind.js';
import { renderElectric } from './render-electric.js';
import type { Electric } from './electric.js';
import { ELECTRIC_KIND } from './electric-kind.js';

export const ELECTRIC_SOURCE: MovingSource<Electric> = { ...ELECTRIC_KIND, render: renderElectric };
