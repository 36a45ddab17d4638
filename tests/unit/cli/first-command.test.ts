import { spawn } from 'node:child_process';
import { existsSync, rmSync, writeFileSync } from 'node:fs';
import net from 'node:net';
import path from 'node:path';
import { afterAll, beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import { listen } from '../../../src/cli/listen.mjs';
import { freshClone } from '../../helpers/fresh-clone.js';
import packageJson from '../../../package.json' with { type: 'json' };

// Each command is a process of its own, one of them builds the page; a busy machine takes its time.
vi.setConfig({ testTimeout: 180_000 });

const clone = freshClone();
beforeEach(clone.clean);
afterAll(clone.remove);

const scripts: Record<string, string> = packageJson.scripts;
const INSTALLING = 'Installing the packages of package-lock.json (once) …\n';

interface Typed {
  stdout: string;
  stderr: string;
  /** Null where it was ended because it had said enough. */
  code: number | null;
}

/** Types `npm run NAME -- WORDS` as the first command in the clone; waits for its end, or for `enough` on stdout. */
function typed(name: string, words: string[], enough?: RegExp): Promise<Typed> {
  const [program, ...script] = scripts[name].split(' ');
  expect(program).toBe('node');
  return started([...script, ...words], enough);
}

function started(args: string[], enough?: RegExp): Promise<Typed> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      cwd: clone.folder,
      env: clone.env,
      stdio: ['ignore', 'pipe', 'pipe']
    });
    const ended = new Promise<void>((done) => child.on('close', () => done()));
    // Gone before the clone is.
    onTestFinished(() => {
      child.kill();
      return ended;
    });
    const said = { stdout: '', stderr: '' };
    child.stdout.setEncoding('utf8').on('data', (part) => {
      said.stdout += part;
      if (enough?.test(said.stdout)) resolve({ ...said, code: null });
    });
    child.stderr.setEncoding('utf8').on('data', (part) => (said.stderr += part));
    child.on('error', reject);
    child.on('close', (code) => {
      if (enough) reject(new Error(`it ended with ${code}: ${said.stdout}\n${said.stderr}`));
      else resolve({ ...said, code });
    });
  });
}

async function freePort(): Promise<string> {
  const server = net.createServer();
  const port = await listen(server, 0);
  await new Promise((resolve) => server.close(resolve));
  return String(port);
}

/** How far each command goes here, as the first one that is typed in a clone that has nothing. */
const first: Record<string, () => Promise<void>> = {
  predict: async () => {
    const { code, stdout, stderr } = await typed('predict', [
      'tests/reference/demo-bench.json',
      '--frequencies',
      '300'
    ]);
    expect([code, stderr]).toEqual([0, INSTALLING]);
    expect(JSON.parse(stdout).setups).toHaveLength(5);
  },
  start: async () => {
    const { stdout } = await typed('start', ['--port', await freePort()], /\(Ctrl\+C stops it\)\n/);
    const [address] = stdout.match(/http\S+/) ?? [''];
    expect(await (await fetch(address)).text()).toContain('<title>Backwave');
  },
  dev: async () => {
    const port = await freePort();
    await typed('dev', ['--port', port, '--strictPort'], /Local:/);
    const script = await fetch(`http://127.0.0.1:${port}/src/lib/numeric/lru-cache.ts`);
    expect(await script.text()).not.toContain('readonly');
  },
  // The whole of the build is what `start` above has made.
  build: async () => void (await typed('build', [], /building .* for production/)),
  speed: async () => {
    const { code, stdout, stderr } = await typed('speed', ['--once']);
    expect([code, stderr]).toEqual([0, INSTALLING]);
    const [timed, waves, growth] = stdout.trimEnd().split('\n\n');
    const rows = timed.split('\n');
    expect(rows.length).toBeGreaterThan(5);
    expect(rows.shift()).toMatch(/^memory for a run past of 30 s, at its most +\d+\.\d MB$/);
    for (const row of rows) expect(row).toMatch(/^\S.* +\d+\.\d+ ms +\d+\.\d ×( +\d+ times real time)?$/);
    for (const shell of ['draft, central', 'draft, 30 mm off'])
      expect(waves).toMatch(new RegExp(`^Node, ${shell}( +\\d+){2}( +\\d+\\.\\d{3}){5}$`, 'm'));
    expect(waves).toContain(
      '\nFull solutions, Chromium and the plain program in Python are left out of --once.'
    );
    expect(growth).toMatch(/^Over all: matrices ∝ N\^-?\d\.\d\d, one frequency ∝ N\^-?\d\.\d\d\.$/m);
  },
  format: async () => {
    const { code, stdout, stderr } = await typed('format', ['README.md']);
    expect([code, stderr]).toEqual([0, INSTALLING]);
    expect(stdout).toMatch(/^Finished in \S+ on 1 files/);
  },
  lint: async () => {
    const faults = {
      'src/lib/numeric/fault.ts': "export { LIMITS } from '../acoustics/limits.js';\n",
      'src/lib/waves/mesh/fault.ts': "export * from '../solve/wave-problem.js';\nimport 'idb-keyval';\n",
      'src/lib/bench/air/fault.svelte.ts': "export * from '../votes/bench-votes.svelte.js';\n",
      'src/lib/plot/Fault.svelte': '<script>import "$lib/screens/lab/commands.js"; const a = 1;</script>\n'
    };
    for (const [name, text] of Object.entries(faults)) writeFileSync(path.join(clone.folder, name), text);
    const { code, stdout, stderr } = await typed('lint', ['src/cli/root.mjs', ...Object.keys(faults)]);
    for (const name of Object.keys(faults)) rmSync(path.join(clone.folder, name));
    expect([code, stderr]).toEqual([1, INSTALLING]);
    expect(stdout.match(/\S+ may not import from \S+/g)?.sort()).toEqual([
      'bench/air may not import from bench/votes',
      'numeric may not import from acoustics',
      'plot may not import from screens/lab',
      'waves/mesh may not import from idb-keyval',
      'waves/mesh may not import from waves/solve'
    ]);
    // What is right is passed over, whichever linter it belongs to.
    expect(stdout).not.toContain('root.mjs');
    expect(stdout).toContain("'a' is assigned a value but never used");
  },
  // Up to the check itself: the whole of it is what `npm test` does before anything else.
  check: async () => {
    const { code, stdout } = await typed('check', ['--help']);
    expect(code).toBe(0);
    expect(stdout).toContain('$ svelte-check [options]');
    expect(existsSync(path.join(clone.folder, '.svelte-kit/tsconfig.json'))).toBe(true);
  },
  test: async () => void (await typed('test', [], /── types: /)),
  'test:unit': async () => {
    const { code, stdout } = await typed('test:unit', ['tests/unit/format/clock-time.test.ts']);
    expect(code).toBe(0);
    expect(stdout).toMatch(/Tests.*2 passed/);
  },
  'test:browser': async () => {
    const { code, stdout, stderr } = await typed('test:browser', ['--list', 'audio-held-back']);
    expect([code, stderr]).toEqual([0, INSTALLING]);
    expect(stdout).toMatch(/Total: 1 test in 1 file/);
    // What it serves the audio graph by, without the page having been built.
    const port = await freePort();
    const vite = ['node_modules/vite/bin/vite.js', '--config', 'tests/browser/harness/vite.config.ts'];
    await started([...vite, '--host', '127.0.0.1', '--port', port, '--strictPort'], /Local:/);
    const script = await fetch(`http://127.0.0.1:${port}/recorded-room.ts`);
    expect(script.status).toBe(200);
    expect(await script.text()).not.toContain('interface ');
  }
};

describe('as the first command that is typed in a fresh clone', () => {
  test('every command of package.json is looked at', () => {
    expect(Object.keys(first).sort()).toEqual(Object.keys(scripts).sort());
  });

  test.each(Object.keys(first))('%s runs', async (name) => first[name]());
});
