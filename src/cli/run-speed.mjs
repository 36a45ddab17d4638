import { ensureInstalled } from './ensure-installed.mjs';
import { readFlags } from './flags.mjs';
import { loadTypescript } from './load-typescript.mjs';
import { medianMs } from './median-ms.mjs';
import { orRefuse } from './refusal.mjs';

/** @typedef {{ name: string, sound?: () => number, prepare: () => () => unknown, prepareLittle?: () => () => unknown }} SpeedCase */

const help = `npm run speed -- [--once]

Takes the time of what the lab computes (tests/speed): the median in milliseconds, and as a multiple of an
FFT taken in the same run, so that runs on different machines compare; of sounds also how many times faster
than they play they are made. Then what the wave solution takes, in Node and in Chromium, and beside it the same
scheme written plainly in NumPy, where Chromium and python3 with NumPy and SciPy are found; and how it grows.

  --once   run everything one time only, to see that it runs, in Node alone
  --help   this text`;

/**
 * `npm run speed`.
 * @param {string[]} args
 */
export async function main(args) {
  await orRefuse(async () => {
    const { values } = readFlags(args, {
      once: { type: 'boolean' },
      help: { type: 'boolean', short: 'h' }
    });
    if (values.help) return console.log(help);
    if (!(await ensureInstalled())) {
      process.exitCode = 1;
      return;
    }
    await measure(values.once ?? false);
  });
}

/** @param {boolean} once */
async function measure(once) {
  /** @type {{ memory: SpeedCase }} */
  const { memory } = await loadTypescript('tests/speed/memory.ts');
  console.log(`${memory.name.padEnd(52)} ${peakMegabytes(memory).toFixed(1).padStart(9)} MB`);
  /** @type {{ reference: SpeedCase, cases: SpeedCase[] }} */
  const { reference, cases } = await loadTypescript('tests/speed/cases.ts');
  const unit = medianMs(reference.prepare(), { once });
  console.log(row(reference.name, unit, unit));
  for (const { name, sound, prepare, prepareLittle } of cases) {
    const little = once ? prepareLittle?.() : undefined;
    const ms = medianMs(little ?? prepare(), { once });
    console.log(row(little ? `${name} (a part)` : name, ms, unit, sound?.()));
  }
  // Not before everything is installed.
  const { reportWaves } = await import('../../tests/speed/waves/report.mjs');
  await reportWaves({ once });
}

/**
 * How far the process's highest memory rises; to be asked before anything else has used much of it.
 * @param {SpeedCase} one
 */
function peakMegabytes({ prepare }) {
  const run = prepare();
  const before = process.resourceUsage().maxRSS;
  run();
  return (process.resourceUsage().maxRSS - before) / 1024;
}

/**
 * @param {string} name
 * @param {number} ms
 * @param {number} unit
 * @param {number} [sound] seconds of sound that were made
 */
function row(name, ms, unit, sound) {
  const realTime = sound ? `   ${((sound * 1000) / ms).toFixed(0).padStart(5)} times real time` : '';
  const digits = ms < 10 ? 3 : 1;
  return `${name.padEnd(52)} ${ms.toFixed(digits).padStart(9)} ms ${(ms / unit).toFixed(1).padStart(9)} ×${realTime}`;
}
