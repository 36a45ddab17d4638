import { spawn } from 'node:child_process';
import path from 'node:path';

export interface Ran {
  code: number | null;
  stdout: string;
  stderr: string;
}

const root = path.join(import.meta.dirname, '../..');

/** Runs one of the commands of src/cli as a user would and waits for its end. */
export function runCommand(
  name: 'start' | 'test' | 'predict' | 'speed',
  args: string[],
  { stdin = '', cwd = root }: { stdin?: string; cwd?: string } = {}
): Promise<Ran> {
  return new Promise((resolve, reject) => {
    // What an npm around this test run says about itself is not what the command would find.
    const env = { ...process.env, INIT_CWD: undefined, npm_lifecycle_event: undefined };
    const child = spawn(process.execPath, [path.join(root, 'src/cli', `${name}.mjs`), ...args], { cwd, env });
    let stdout = '';
    let stderr = '';
    child.stdout.setEncoding('utf8').on('data', (part) => (stdout += part));
    child.stderr.setEncoding('utf8').on('data', (part) => (stderr += part));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, stdout, stderr }));
    // A command that refuses its flags is gone before it has read anything.
    child.stdin.on('error', () => undefined);
    child.stdin.end(stdin);
  });
}
