import { describe, expect, test } from 'vitest';
import { addCounts, countLine, countPlaywright, countVitest } from '../../../src/cli/test-counts.mjs';

const vitest = (...files: { status: string; tests: string[] }[]) =>
  JSON.stringify({
    testResults: files.map(({ status, tests }) => ({
      status,
      assertionResults: tests.map((one) => ({ status: one }))
    }))
  });

describe('countLine', () => {
  test('names skipped tests only if there are any', () => {
    expect(countLine({ passed: 3, failed: 0, skipped: 0 })).toBe('3 passed, 0 failed');
    expect(countLine({ passed: 3, failed: 1, skipped: 2 })).toBe('3 passed, 1 failed, 2 skipped');
  });

  test('sums add up', () => {
    const sum = addCounts({ passed: 1, failed: 2, skipped: 3 }, { passed: 10, failed: 20, skipped: 30 });
    expect(sum).toEqual({ passed: 11, failed: 22, skipped: 33 });
  });
});

describe('countVitest', () => {
  test('counts tests over files', () => {
    const report = vitest(
      { status: 'passed', tests: ['passed', 'passed', 'pending'] },
      { status: 'failed', tests: ['failed', 'passed'] }
    );
    expect(countVitest(report, 1)).toEqual({ passed: 3, failed: 1, skipped: 1 });
  });

  test('a file that could not be loaded is a failure', () => {
    const report = vitest({ status: 'failed', tests: [] }, { status: 'passed', tests: ['passed'] });
    expect(countVitest(report, 1)).toEqual({ passed: 1, failed: 1, skipped: 0 });
  });

  test.each([
    ['no report', null, 1],
    ['a broken report', '{', 0],
    ['no tests at all', vitest(), 0],
    ['an error outside of every test', vitest({ status: 'passed', tests: ['passed'] }), 1]
  ])('%s is a failure', (_, report, code) => {
    expect(countVitest(report, code).failed).toBe(1);
  });
});

describe('countPlaywright', () => {
  const report = (stats: object) => JSON.stringify({ stats });

  test('a test that passed at the second try only has failed', () => {
    const stats = { expected: 5, unexpected: 1, flaky: 1, skipped: 2 };
    expect(countPlaywright(report(stats), 1)).toEqual({ passed: 5, failed: 2, skipped: 2 });
  });

  test('nothing run, or no report, is a failure', () => {
    const none = { expected: 0, unexpected: 0, flaky: 0, skipped: 0 };
    expect(countPlaywright(report(none), 0).failed).toBe(1);
    expect(countPlaywright(null, 0).failed).toBe(1);
    expect(countPlaywright('{}', 0).failed).toBe(1);
  });
});
