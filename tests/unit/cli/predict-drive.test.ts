import { describe, expect, test, vi } from 'vitest';
import { predict } from '../../../src/cli/predict.js';
import { close } from '../../helpers/close.js';
import { drivenBench, predicted, withFile } from '../../helpers/predicted.js';

// Each command is a process of its own; a busy machine takes its time.
vi.setConfig({ testTimeout: 30_000 });

describe('at a stated drive', () => {
  const f = [0.001, 348.133, 1000];
  const flags = ['-', '--frequencies', f.join(), '--drive', '2'];

  test('level, travel and impedance are those of Small (1972), by the rule of thumb', async () => {
    const { drive, setups } = await predicted(flags, drivenBench());
    expect(drive).toBe(2);
    const [one, two] = setups;
    // what is written down here is worked out apart from the program: fs, Qes of these motor values
    const [mms, cms, bl, re, qms] = [0.00055, 0.00038, 1.6, 7.2, 3];
    const fs = 1 / (2 * Math.PI * Math.sqrt(mms * cms));
    const qes = (2 * Math.PI * fs * mms * re) / (bl * bl);
    const area = (Math.PI / 4) * 0.034 * 0.0224;
    const atHalfAMetre = (1.2041 * area * bl * 2) / (2 * Math.PI * mms * re * 0.5);
    one.levelAtListenerDb!.forEach((level, k) =>
      close(level! - one.levelDb[k]!, 20 * Math.log10(atHalfAMetre / 20e-6), {
        abs: 0.01,
        because: 'density of air in four digits'
      })
    );
    close(one.travel![0], (Math.SQRT2 * 2 * bl * cms) / re, { rel: 1e-6, because: 'the spring alone' });
    close(two.travel![0], one.travel![0] / 2, { rel: 1e-6, because: 'half the voltage each' });
    close(one.impedance!.re[0], re, { rel: 1e-6, because: 'nothing moves' });
    close(one.impedance!.re[1], re * (1 + qms / qes), { rel: 1e-4, because: 'f in six digits' });
    close(two.impedance!.re[1], 2 * one.impedance!.re[1], { rel: 1e-9, because: 'one after the other' });
    close(two.levelAtListenerDb![0]! - one.levelAtListenerDb![0]!, 0, { abs: 1e-6, because: 'series: 0 dB' });
  });

  test('the file’s drive counts where no flag does, in volts or in watts', async () => {
    const [, ...rest] = flags;
    const file = { drive: { watts: 0.5, into: 8 } };
    const byFile = await predicted(['-', ...rest.slice(0, 2)], drivenBench(file));
    expect(byFile.drive).toBe(2);
    expect(byFile).toEqual(await predicted(flags, drivenBench()));
    expect(
      await predicted(['-', '--drive', '2', '--frequencies', f.join()], drivenBench({ drive: { volts: 9 } }))
    ).toEqual(byFile);
  });

  test('without a drive, or for the mount alone, nothing is told of it', async () => {
    for (const args of [['-'], ['-', '--speaker', 'ideal']]) {
      const prediction = await predicted(args, drivenBench(args.length > 1 ? { drive: { volts: 2 } } : {}));
      expect(prediction).not.toHaveProperty('drive');
      expect(prediction.setups[0]).not.toHaveProperty('travel');
    }
  });

  test('the wave solution tells the same with its own load', async () => {
    const { setups } = await predicted([...flags, '--model', 'wave', '--accuracy', 'draft'], drivenBench());
    const [one, two] = setups;
    expect(Object.keys(one)).toEqual([
      ...['name', 'kind', 'sensitivityDb', 'highest', 'levelDb', 'phaseRad', 'load'],
      ...['levelAtListenerDb', 'travel', 'impedance']
    ]);
    close(one.impedance!.re[0], 7.2, { rel: 1e-6, because: 'nothing moves' });
    close(two.travel![0], one.travel![0] / 2, { rel: 1e-3, because: 'the spring alone' });
  });

  test('a lift of the file is in levels and travel, and not in the impedance', async () => {
    const lift = { gainDb: 6, below: 300 };
    const [plain, lifted] = await Promise.all(
      [{}, { lift }].map((top) => predicted(flags, drivenBench(top)))
    );
    expect(plain).not.toHaveProperty('lift');
    expect(lifted.lift).toEqual(lift);
    const [one, two] = [plain.setups[0], lifted.setups[0]];
    // all of it where the spring alone holds the cone, next to nothing at 3 kHz
    close(two.levelAtListenerDb![0]! - one.levelAtListenerDb![0]!, 6, {
      abs: 0.01,
      because: 'far below 300 Hz'
    });
    close(two.levelDb[0]! - one.levelDb[0]!, 6, { abs: 0.01, because: 'far below 300 Hz' });
    close(two.travel![0] / one.travel![0], 10 ** (6 / 20), { rel: 0.001, because: 'far below 300 Hz' });
    expect(two.impedance).toEqual(one.impedance);
    expect((await predicted(['-', '--speaker', 'ideal'], drivenBench({ lift }))).setups[0].levelDb).toEqual(
      (await predicted(['-', '--speaker', 'ideal'], drivenBench())).setups[0].levelDb
    );
  });

  test('as a table four columns more', async () => {
    const csv = await predict(withFile([...flags, '--format', 'csv'], drivenBench()));
    expect(csv.split('\n')[0].split(',').slice(1, 7)).toEqual([
      'Flat plate level_db',
      'Flat plate phase_rad',
      'Flat plate level_at_listener_db',
      'Flat plate travel_m',
      'Flat plate impedance_re_ohm',
      'Flat plate impedance_im_ohm'
    ]);
  });
});
