import { createReadStream } from 'node:fs';
import path from 'node:path';
import type { Readable } from 'node:stream';
import { Refusal } from './refusal.mjs';

/** Four bytes for each character that a bench file may have. */
const MOST_BYTES = 4_000_000;

/**
 * The text of a file, or of stdin for `-`. A relative name counts from the folder where the user called
 * npm, not from the checkout into which npm changes.
 * @throws Refusal with one sentence
 */
export async function readInput(name: string): Promise<string> {
  if (name === '-') return textOf(process.stdin, 'stdin');
  const { INIT_CWD, npm_lifecycle_event } = process.env;
  const from = npm_lifecycle_event === 'predict' && INIT_CWD ? INIT_CWD : process.cwd();
  return textOf(createReadStream(path.resolve(from, name)), JSON.stringify(name));
}

async function textOf(stream: Readable, called: string): Promise<string> {
  const parts: Buffer[] = [];
  let bytes = 0;
  try {
    for await (const part of stream as AsyncIterable<Buffer>) {
      parts.push(part);
      bytes += part.length;
      if (bytes > MOST_BYTES) throw new Refusal(`${called} is too large for a bench file (over 4 MB)`);
    }
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(parts));
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(`${called} cannot be read: ${reason(error)}`);
  }
}

function reason(error: unknown): string {
  if (error instanceof TypeError) return 'it is no UTF-8 text';
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT') return 'there is no such file';
  if (code === 'EISDIR') return 'it is a folder';
  if (code === 'EACCES' || code === 'EPERM') return 'it may not be read';
  return `the system says ${code ?? 'that it failed'}`;
}
