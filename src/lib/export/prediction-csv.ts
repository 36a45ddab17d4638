import type { Prediction, SetupPrediction } from '../evaluation/prediction.js';

/**
 * A prediction as a table: one row a frequency; two columns a setup, four where there is a load; quoted as RFC 4180
 * asks. A level that does not exist (H = 0) is an empty cell.
 */
export function predictionCsv({ frequency, setups }: Prediction): string {
  const columns = setups.flatMap(columnsOf);
  const header = ['frequency_hz', ...columns.map(({ title }) => title)];
  const rows = frequency.map((f, k) => [String(f), ...columns.map(({ values }) => String(values[k] ?? ''))]);
  return [header, ...rows].map((row) => `${row.map(cell).join(',')}\n`).join('');
}

function columnsOf({
  name,
  levelDb,
  phaseRad,
  load
}: SetupPrediction): { title: string; values: (number | null)[] }[] {
  return [
    { title: `${name} level_db`, values: levelDb },
    { title: `${name} phase_rad`, values: phaseRad },
    ...(load
      ? [
          { title: `${name} load_re_pa_s_m3`, values: load.re },
          { title: `${name} load_im_pa_s_m3`, values: load.im }
        ]
      : [])
  ];
}

function cell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
