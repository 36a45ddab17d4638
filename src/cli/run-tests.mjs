import { ensureInstalled } from './ensure-installed.mjs';
import { readFlags } from './flags.mjs';
import { Refusal, orRefuse } from './refusal.mjs';
import { addCounts, countLine, noCounts } from './test-counts.mjs';
import { stages } from './test-stages.mjs';

const help = `npm test -- [--only STAGE,…] [--install-browser]

Installs where that is needed and runs the first three side by side, the others one after the other:

${stages.map(({ name, what }) => `  ${name.padEnd(8)} ${what}`).join('\n')}

  --only LIST        these stages alone, for example --only lint,unit
  --install-browser  as root: apt-get may install Chromium where there is no browser
  --help             this text

A stage that fails does not keep the next ones from running. The last line counts everything.`;

/**
 * `npm test`.
 * @param {string[]} args
 */
export async function main(args) {
  await orRefuse(async () => {
    const { values } = readFlags(args, {
      only: { type: 'string' },
      'install-browser': { type: 'boolean' },
      help: { type: 'boolean', short: 'h' }
    });
    if (values.help) return console.log(help);
    const chosen = stagesOf(values.only);
    process.exitCode = (await runStages(chosen, values['install-browser'] ?? false)) ? 0 : 1;
  });
}

/** @param {string | undefined} list */
function stagesOf(list) {
  if (list === undefined) return stages;
  const names = list.split(',').map((name) => name.trim());
  const unknown = names.find((name) => !stages.some((stage) => stage.name === name));
  if (unknown !== undefined)
    throw new Refusal(`there is no stage "${unknown}": ${stages.map(({ name }) => name).join(', ')}`);
  return stages.filter(({ name }) => names.includes(name));
}

/**
 * Runs the stages and prints the count as the very last line: the static checks side by side, then the
 * others in turn.
 * @param {import('./test-stages.mjs').Stage[]} chosen
 * @param {boolean} installBrowser
 * @returns {Promise<boolean>} whether nothing failed
 */
async function runStages(chosen, installBrowser) {
  if (!(await ensureInstalled())) {
    console.log(
      `\ninstall   failed; nothing could be run\n${countLine({ ...noCounts, failed: chosen.length })}`
    );
    return false;
  }
  const run = async (/** @type {import('./test-stages.mjs').Stage} */ stage) => {
    console.log(`\n── ${stage.name}: ${stage.what}`);
    const begun = performance.now();
    const counts = await stage.run({ installBrowser });
    const seconds = ((performance.now() - begun) / 1000).toFixed(1);
    return { counts, line: `${stage.name.padEnd(8)} ${seconds.padStart(6)} s  ${countLine(counts)}` };
  };
  const beside = chosen.filter((stage) => stage.static);
  const checks = beside.map(run);
  if (beside.length > 0) await Promise.all(chosen.map((stage) => stage.prepare?.()));
  const results = await Promise.all(checks);
  for (const stage of chosen.filter((stage) => !stage.static)) results.push(await run(stage));
  const total = results.map(({ counts }) => counts).reduce(addCounts, noCounts);
  console.log(`\n${results.map(({ line }) => line).join('\n')}\n${countLine(total)}`);
  return total.failed === 0;
}
