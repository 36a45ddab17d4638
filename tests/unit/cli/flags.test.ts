import { expect, test } from 'vitest';
import { readFlags } from '../../../src/cli/flags.mjs';

const options = { angle: { type: 'string' }, help: { type: 'boolean', short: 'h' } } as const;

test('a value may begin with a minus', () => {
  expect(readFlags(['--angle', '-30'], options).values.angle).toBe('-30');
  expect(readFlags(['--angle=-30'], options).values.angle).toBe('-30');
  expect(readFlags(['--angle', '-.5'], options).values.angle).toBe('-.5');
});

test('a lone minus is an argument', () => {
  expect(readFlags(['-'], options, { positionals: true }).positionals).toEqual(['-']);
});

test.each([
  [['--angel', '3']],
  [['--angle']],
  [['--angle', '--help']],
  [['--help=yes']],
  [['stray']],
  [['--a.b']]
])('%j is refused in one sentence', (args) => {
  expect(() => readFlags(args, options)).toThrow(
    expect.objectContaining({
      name: 'Refusal',
      message: expect.stringMatching(/^[^\n]+\(--help lists.*\)$/)
    })
  );
});
