import { csvText } from './csv-text.js';
import type { Prediction, SetupPrediction } from '../evaluation/prediction.js';

/**
 * A prediction as a table: one row a frequency; two columns a setup, two more where there is a load, four more where there is a drive;
 * quoted as RFC 4180 asks. A level that does not exist (H = 0) is an empty cell.
 */
export function predictionCsv({ frequency, setups }: Prediction): string {
  const columns = setups.flatMap(columnsOf);
  const header = ['frequency_hz', ...columns.map(({ title }) => title)];
  const rows = frequency.map((f, k) => [String(f), ...columns.map(({ values }) => String(values[k] ?? ''))]);
  return csvText([header, ...rows]);
}

function columnsOf({
  name,
  levelDb,
  phaseRad,
  load,
  levelAtListenerDb,
  travel,
  impedance
}: SetupPrediction): { title: string; values: (number | null)[] }[] {
  return [
    { title: `${name} level_db`, values: levelDb },
    { title: `${name} phase_rad`, values: phaseRad },
    ...(load
      ? [
          { title: `${name} load_re_pa_s_m3`, values: load.re },
          { title: `${name} load_im_pa_s_m3`, values: load.im }
        ]
      : []),
    ...(levelAtListenerDb && travel && impedance
      ? [
          { title: `${name} level_at_listener_db`, values: levelAtListenerDb },
          { title: `${name} travel_m`, values: travel },
          { title: `${name} impedance_re_ohm`, values: impedance.re },
          { title: `${name} impedance_im_ohm`, values: impedance.im }
        ]
      : [])
  ];
}
