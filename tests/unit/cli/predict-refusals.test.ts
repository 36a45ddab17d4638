import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { predict } from '../../../src/cli/predict.js';
import { demoBenchPath, demoBenchText, type Loose } from '../../helpers/demo-bench-text.js';
import { runCommand } from '../../helpers/run-command.js';
import { temporaryFolder } from '../../helpers/temporary-folder.js';
import { drivenBench, withFile } from '../../helpers/predicted.js';

// Each command is a process of its own; a busy machine takes its time.
vi.setConfig({ testTimeout: 30_000 });

describe('a refusal is one sentence on stderr, nothing on stdout, and exit code 2', () => {
  /** The sentence of a refusal, without starting a process. */
  async function refused(args: string[], text = ''): Promise<string> {
    const refusal = await predict(withFile(args, text)).then(
      () => expect.unreachable('an answer'),
      (error: Error) => error
    );
    expect(refusal.name).toBe('Refusal');
    expect(refusal.message).toMatch(/^[^\n]{10,300}$/);
    return refusal.message;
  }

  test.each<[string, string[], string, string]>([
    ['a flag', ['-', '--model', 'waves'], '', '--model must be rule or wave, got "waves"'],
    ['too much of it', ['-'], ' '.repeat(5_000_000), 'stdin is too large for a bench file (over 4 MB)']
  ])('from the command itself: %s', async (_, args, stdin, sentence) => {
    expect(await runCommand('predict', args, { stdin })).toEqual({
      code: 2,
      stdout: '',
      stderr: `${sentence}\n`
    });
  });

  test.each<[string, string[], string, string]>([
    ['no file', ['gone.json'], '', '"gone.json" cannot be read: there is no such file'],
    [
      'a newer file',
      ['-'],
      '{"format":"backwave-bench","version":9}',
      'this bench file is of version 9; this program reads versions 1 … 8'
    ],
    ['--by without --fit', ['-', '--by', 'deep'], '', '--by is for --fit only'],
    ['--every-size without --fit', ['-', '--every-size'], '', '--every-size is for --fit only'],
    [
      '--fit with a flag of single setups',
      ['-', '--fit', '--frequencies', '100'],
      '',
      '--frequencies does not go with --fit, which asks the wave solution where the file listens'
    ],
    [
      '--fit of a bench without a model',
      ['-', '--fit'],
      drivenBench({ version: 8 }),
      'this bench file says no model to be fitted out: it lacks "model"'
    ],
    [
      'a measure that is none',
      ['-', '--fit', '--by', 'best'],
      '',
      '--by must be level or deep or even or space or price or loudest, got "best"'
    ],
    [
      'a drive for a mount alone',
      ['-', '--speaker', 'ideal', '--drive', '1'],
      demoBenchText(),
      '--drive is for --speaker full only: ideal leaves out what a voltage does to the speaker'
    ],
    ['no drive', ['-', '--drive', '0'], demoBenchText(), '--drive must be within 0.001 … 100 V, got "0"'],
    [
      'a mount',
      ['-'],
      demoBenchText((bench) => (bench.setups[1].mount.length = 0)),
      'setups[1] (Flat plate): plate length must be within 1 … 3000 mm, got 0'
    ],
    [
      'an angle',
      [demoBenchPath, '--angle', '-30'],
      '',
      'the rule of thumb knows the sound straight in front of the cone only: angle must be 0, got -30'
    ]
  ])('word for word: %s', async (_, args, text, sentence) => {
    expect(await refused(args, text)).toBe(sentence);
  });

  test.each<[string[], string]>([
    [[], 'give one bench file, or - for stdin, got 0 (--help lists all)'],
    [['a', 'b'], 'give one bench file, or - for stdin, got 2 (--help lists all)'],
    [['-', '--modle', 'rule'], "Unknown option '--modle' (--help lists what there is)"],
    [['-', '--model', 'waves'], '--model must be rule or wave, got "waves"'],
    [['-', '--model', 'wave', '--accuracy', 'best'], '--accuracy must be draft or full, got "best"'],
    [['-', '--accuracy', 'draft'], '--accuracy is for --model wave only: the rule of thumb is a closed form'],
    [['-', '--speaker', 'both'], '--speaker must be ideal or full, got "both"'],
    [['-', '--plane', 'height'], '--plane must be length or width, got "height"'],
    [['-', '--format', 'xml'], '--format must be json or csv, got "xml"'],
    [['-', '--frequencies', '0'], '--frequencies must be within 0.001 … 1000000 Hz, got "0"'],
    [['-', '--frequencies', '100,-5'], '--frequencies must be within 0.001 … 1000000 Hz, got "-5"'],
    [['-', '--frequencies', '100,,200'], '--frequencies must be within 0.001 … 1000000 Hz, got ""'],
    [['-', '--frequencies', 'Infinity'], '--frequencies must be within 0.001 … 1000000 Hz, got "Infinity"'],
    [['-', '--frequencies', '0x10'], '--frequencies must be within 0.001 … 1000000 Hz, got "0x10"'],
    [
      ['-', '--frequencies', '1'.concat(',1'.repeat(10_000))],
      '--frequencies takes at most 10000 frequencies, got 10001'
    ],
    [['-', '--angle', 'left'], '--angle must be within -180 … 180 degrees, got "left"'],
    [['no such file.json'], '"no such file.json" cannot be read: there is no such file'],
    [[import.meta.dirname], `${JSON.stringify(import.meta.dirname)} cannot be read: it is a folder`]
  ])('%j', async (args, sentence) => {
    expect(await refused(args)).toBe(sentence);
  });

  test.each<[string, string | RegExp]>([
    ['', 'the bench file is empty'],
    ['hello', /^the bench file is not JSON/],
    [
      '{"format": "backwave-bench",\n "version": 1,,}',
      'the bench file is not JSON: line 2, column 15 cannot be read'
    ],
    ['['.repeat(100_000), 'the bench file is nested more than 16 levels deep; no bench is'],
    [' '.repeat(1_000_001), /^the bench file is 1\.0 million characters long; at most 1 million are read$/]
  ])('a file that is none: %#', async (text, sentence) => {
    const got = await refused(['-'], text);
    if (typeof sentence === 'string') expect(got).toBe(sentence);
    else expect(got).toMatch(sentence);
  });

  test.each<[string, (bench: Loose) => void, RegExp]>([
    [
      'a mistyped key',
      (b) => (b.setups[1].mount.lenght = 1),
      /^setups\[1\]\.mount has an unknown key "lenght"$/
    ],
    [
      'a length of 0',
      (b) => (b.setups[1].mount.length = 0),
      /^setups\[1\] \(Flat plate\): plate length .*got 0$/
    ],
    ['a negative one', (b) => (b.setups[1].mount.width = -1), /^setups\[1\] \(Flat plate\): plate width /],
    ['an absurd one', (b) => (b.setups[3].mount.height = 1e9), /^setups\[3\] \(Cab body\): shell height /],
    [
      'no number',
      (b) => (b.setups[4].mount.depth = '17 mm'),
      /^setups\[4\]\.mount\.depth must be a number, got "17 mm"$/
    ],
    [
      'a cone larger than its plate',
      (b) => (b.setups[2].mount.diameter = 0.02),
      /^setups\[2\] .*the cone .* plate/
    ],
    [
      'a body that fills its box',
      (b) => (b.speakers.oval.bodyVolume = 0.001),
      /^setups\[4\] .*body fills the box/
    ],
    ['a speaker without motor', (b) => delete b.speakers.oval.motor, /^setups\[0\] .*no motor values/],
    ['an angle', (b) => (b.listener.angleDeg = 30), /angle must be 0, got 30$/]
  ])('%s', async (_, change, sentence) => {
    expect(await refused(['-'], demoBenchText(change))).toMatch(sentence);
  });

  test('what is no text', async () => {
    const file = path.join(temporaryFolder(), 'noise.json');
    writeFileSync(file, Buffer.from([0xff, 0xfe, 0x00, 0x80]));
    expect(await refused([file])).toMatch(/noise\.json" cannot be read: it is no UTF-8 text$/);
  });
});
