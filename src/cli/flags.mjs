import { parseArgs } from 'node:util';
import { Refusal } from './refusal.mjs';

/**
 * Reads the flags of a command; an unknown one, or one without its value, is refused in one sentence.
 * @template {Record<string, { type: 'string' | 'boolean', short?: string }>} T
 * @param {string[]} args
 * @param {T} options as `parseArgs` of node:util takes them
 * @param {{ positionals?: boolean }} [also]
 */
export function readFlags(args, options, { positionals = false } = {}) {
  try {
    return parseArgs({ args: joined(args, options), options, allowPositionals: positionals });
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    throw new Refusal(`${message.split(/\. |\n/, 1)[0].replace(/\.$/, '')} (--help lists what there is)`);
  }
}

/**
 * `--angle -30` becomes `--angle=-30`: a value may begin with a minus.
 * @param {string[]} args
 * @param {Record<string, { type: string }>} options
 * @returns {string[]}
 */
function joined(args, options) {
  const out = [];
  for (let i = 0; i < args.length; i++) {
    const takesValue = options[args[i].slice(2)]?.type === 'string' && args[i].startsWith('--');
    if (takesValue && /^-[\d.]/.test(args[i + 1] ?? '')) out.push(`${args[i]}=${args[++i]}`);
    else out.push(args[i]);
  }
  return out;
}
