/** The diesel engine of a locomotive: knobs, how it is rendered, and the engines of the roster. */
export { type Diesel, DIESEL_KNOBS, dieselRpm, firingRate, patternRate } from './diesel-engine.js';
export { DIESEL_KIND } from './diesel-kind.js';
export { DIESEL_PRESETS } from './diesel-presets.js';
