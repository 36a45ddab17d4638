import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

/** An empty folder with a space in its name, gone when the test is over. */
export function temporaryFolder(): string {
  const folder = realpathSync(mkdtempSync(path.join(os.tmpdir(), 'back wave ')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
