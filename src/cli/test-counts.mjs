/** @typedef {{ passed: number, failed: number, skipped: number }} Counts */

/** @type {Counts} */
export const noCounts = { passed: 0, failed: 0, skipped: 0 };

/**
 * @param {Counts} a
 * @param {Counts} b
 * @returns {Counts}
 */
export function addCounts(a, b) {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed, skipped: a.skipped + b.skipped };
}

/**
 * `12 passed, 0 failed`; skipped ones are named only if there are any.
 * @param {Counts} counts
 * @returns {string}
 */
export function countLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}

/**
 * A check that either holds or not counts as one.
 * @param {boolean} ok
 * @returns {Counts}
 */
export function countOne(ok) {
  return ok ? { ...noCounts, passed: 1 } : { ...noCounts, failed: 1 };
}

/**
 * Counts vitest's JSON report. A file that fails before any of its tests ran counts as one failure.
 * @param {string | null} text the report; null if there is none
 * @param {number} exitCode
 * @returns {Counts}
 */
export function countVitest(text, exitCode) {
  const report = parsed(text);
  if (!report) return countOne(false);
  /** @type {{ status: string, assertionResults: { status: string }[] }[]} */
  const files = report.testResults ?? [];
  const counts = { ...noCounts };
  for (const file of files) {
    const failed = file.assertionResults.filter(({ status }) => status === 'failed').length;
    const passed = file.assertionResults.filter(({ status }) => status === 'passed').length;
    counts.passed += passed;
    counts.failed += failed;
    counts.skipped += file.assertionResults.length - passed - failed;
    if (file.status === 'failed' && failed === 0) counts.failed += 1;
  }
  return notSilent(counts, exitCode);
}

/**
 * Counts Playwright's JSON report. A test that passed only at a second try counts as failed.
 * @param {string | null} text the report; null if there is none
 * @param {number} exitCode
 * @returns {Counts}
 */
export function countPlaywright(text, exitCode) {
  const report = parsed(text);
  if (!report?.stats) return countOne(false);
  const { expected, unexpected, flaky, skipped } = report.stats;
  return notSilent({ passed: expected, failed: unexpected + flaky, skipped }, exitCode);
}

/**
 * A runner that ran nothing, or that fails without a failed test (an error outside of every test), is a
 * failure too.
 * @param {Counts} counts
 * @param {number} exitCode
 * @returns {Counts}
 */
function notSilent(counts, exitCode) {
  const silent = counts.failed === 0 && (exitCode !== 0 || counts.passed === 0);
  return silent ? { ...counts, failed: 1 } : counts;
}

/** @param {string | null} text */
function parsed(text) {
  try {
    return text === null ? null : JSON.parse(text);
  } catch {
    return null;
  }
}
