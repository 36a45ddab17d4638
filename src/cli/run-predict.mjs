import { ensureInstalled } from './ensure-installed.mjs';
import { loadTypescript } from './load-typescript.mjs';
import { orRefuse } from './refusal.mjs';

/**
 * `npm run --silent predict -- FILE …`: stdout carries the answer and nothing else.
 * @param {string[]} args
 */
export async function main(args) {
  if (!(await ensureInstalled({ toStderr: true }))) {
    process.exitCode = 1;
    return;
  }
  // A reader that has seen enough (`| head`) closes the pipe; that is no fault.
  process.stdout.on('error', () => process.exit(0));
  /** @type {{ predict: (args: string[]) => Promise<string> }} */
  const { predict } = await loadTypescript('src/cli/predict.ts');
  await orRefuse(async () => void process.stdout.write(await predict(args)));
}
