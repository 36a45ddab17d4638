import type { FitPrediction } from '../evaluation/fit/fit-now.js';
import { csvText } from './csv-text.js';

const HEADER = [
  'place',
  'tied',
  'name',
  'speaker',
  'way',
  'level_db',
  'reaches_down_hz',
  'unevenness_db',
  'space_m3',
  'price',
  'loudest_db',
  'loudest_v',
  'limit'
];

/** A ranking as a table, one row a candidate, the best first; what cannot be told is an empty cell. */
export function fitCsv({ ranking }: FitPrediction): string {
  const rows = ranking.map((line) => [
    line.place,
    line.tied ? 'yes' : 'no',
    line.name,
    line.speaker,
    line.way,
    line.levelDb,
    line.reachesDown,
    line.unevennessDb,
    line.space,
    line.price,
    line.loudest?.levelDb ?? null,
    line.loudest?.volts ?? null,
    line.loudest?.limit ?? null
  ]);
  return csvText([HEADER, ...rows.map((row) => row.map((cell) => String(cell ?? '')))]);
}
