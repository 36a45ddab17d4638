import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, mkdirSync, writeFileSync } from 'node:fs';
import net from 'node:net';
import path from 'node:path';
import { expect, onTestFinished, test, vi } from 'vitest';
import { sourceHash } from '../../../src/cli/ensure-built.mjs';
import { listen } from '../../../src/cli/listen.mjs';
import { runCommand } from '../../helpers/run-command.js';
import { temporaryFolder } from '../../helpers/temporary-folder.js';

// Each command is a process of its own; a busy machine takes its time.
vi.setConfig({ testTimeout: 30_000 });

/** A checkout, in a folder with a space in its name, that was built before and has no packages any more. */
function builtCheckout(): string {
  const folder = temporaryFolder();
  const cli = path.join(import.meta.dirname, '../../../src/cli');
  cpSync(cli, path.join(folder, 'src/cli'), { recursive: true });
  writeFileSync(path.join(folder, 'package.json'), '{ "type": "module" }');
  mkdirSync(path.join(folder, 'build'));
  writeFileSync(path.join(folder, 'build/index.html'), '<h1>built</h1>');
  writeFileSync(path.join(folder, 'build/.built-from'), sourceHash(folder));
  return folder;
}

/** Starts the page and waits for the line with its address. */
function start(folder: string, port: number): Promise<{ child: ChildProcess; line: string }> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [path.join(folder, 'src/cli/start.mjs'), '--port', String(port)]);
    onTestFinished(() => void child.kill('SIGKILL'));
    let line = '';
    let complaint = '';
    child.stderr.on('data', (part) => (complaint += part));
    child.stdout.on('data', (part) => {
      line += part;
      if (line.endsWith('\n')) resolve({ child, line: line.trimEnd() });
    });
    child.on('close', (code) => reject(new Error(`start ended with ${code}: ${complaint}`)));
  });
}

async function freePort(): Promise<number> {
  const server = net.createServer();
  const port = await listen(server, 0);
  await new Promise((resolve) => server.close(resolve));
  return port;
}

test('a second start needs no packages, prints one line, and serves the page', async () => {
  const { line } = await start(builtCheckout(), await freePort());
  expect(line).toMatch(/^Backwave is at http:\/\/127\.0\.0\.1:\d+\/ \(Ctrl\+C stops it\)$/);
  const [address] = line.match(/http\S+/) ?? [''];
  expect(await (await fetch(address)).text()).toBe('<h1>built</h1>');
});

test('two can run at a time: the second takes another port', async () => {
  const folder = builtCheckout();
  const port = await freePort();
  const first = await start(folder, port);
  const second = await start(folder, port);
  expect(first.line).toContain(`:${port}/`);
  expect(second.line).not.toBe(first.line);
});

test.runIf(process.platform !== 'win32').each(['SIGINT', 'SIGTERM'] as const)(
  '%s ends it quietly',
  async (signal) => {
    const { child } = await start(builtCheckout(), await freePort());
    const ended = new Promise((resolve) => child.on('exit', resolve));
    child.kill(signal);
    expect(await ended).toBe(0);
  }
);

test.each(['0', '65536', '80x', '-1', '1e3', ''])('port %j is refused in one sentence', async (port) => {
  const { code, stdout, stderr } = await runCommand('start', [`--port=${port}`]);
  expect([code, stdout]).toEqual([2, '']);
  expect(stderr).toBe(`--port must be a whole number within 1 … 65535, got ${port}\n`);
});

test('help is printed', async () => {
  const { code, stdout } = await runCommand('start', ['--help']);
  expect(code).toBe(0);
  expect(stdout).toContain('--rebuild');
});
