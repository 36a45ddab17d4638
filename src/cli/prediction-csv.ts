import type { Prediction } from './predict-bench.js';

/**
 * A prediction as a table: one row a frequency, two columns a setup, quoted as RFC 4180 asks. A level that
 * does not exist (H = 0) is an empty cell.
 */
export function predictionCsv({ frequency, setups }: Prediction): string {
  const header = ['frequency_hz', ...setups.flatMap(({ name }) => [`${name} level_db`, `${name} phase_rad`])];
  const rows = frequency.map((f, k) => [
    String(f),
    ...setups.flatMap(({ levelDb, phaseRad }) => [String(levelDb[k] ?? ''), String(phaseRad[k])])
  ]);
  return [header, ...rows].map((row) => `${row.map(cell).join(',')}\n`).join('');
}

function cell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
