import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { holdsWhatIsLocked, installStamp, needsInstall } from '../../../src/cli/ensure-installed.mjs';
import { temporaryFolder } from '../../helpers/temporary-folder.js';

const lock = (packages: object) => JSON.stringify({ lockfileVersion: 3, packages });
const asked = lock({
  '': { name: 'backwave' },
  'node_modules/a': { version: '1.0.0' },
  'node_modules/for-windows': { version: '2.0.0', optional: true }
});

describe('holdsWhatIsLocked', () => {
  test('is true for the same packages, and without those for other machines', () => {
    expect(holdsWhatIsLocked(asked, lock({ 'node_modules/a': { version: '1.0.0' } }))).toBe(true);
  });

  test.each([
    ['another version', lock({ 'node_modules/a': { version: '1.0.1' } })],
    ['one missing', lock({})],
    [
      'one too many',
      lock({ 'node_modules/a': { version: '1.0.0' }, 'node_modules/b': { version: '1.0.0' } })
    ],
    ['what is no JSON', 'broken'],
    ['nothing', null]
  ])('is false for %s', (_, installed) => {
    expect(holdsWhatIsLocked(asked, installed)).toBe(false);
  });
});

describe('needsInstall', () => {
  const checkout = () => {
    const folder = temporaryFolder();
    writeFileSync(path.join(folder, 'package-lock.json'), asked);
    return folder;
  };
  const install = (folder: string) => {
    mkdirSync(path.join(folder, 'node_modules'), { recursive: true });
    const installed = lock({ 'node_modules/a': { version: '1.0.0' } });
    writeFileSync(path.join(folder, 'node_modules/.package-lock.json'), installed);
  };

  test('says yes without node_modules', () => {
    expect(needsInstall(checkout())).toBe(true);
  });

  test('accepts what somebody installed by hand and remembers it by a stamp', () => {
    const folder = checkout();
    install(folder);
    expect(needsInstall(folder)).toBe(false);
    const stamp = path.join(folder, 'node_modules/.backwave-installed');
    expect(readFileSync(stamp, 'utf8')).toBe(installStamp(asked));
  });

  test('says yes once the lock file asks for something else', () => {
    const folder = checkout();
    install(folder);
    expect(needsInstall(folder)).toBe(false);
    writeFileSync(path.join(folder, 'package-lock.json'), asked.replace('1.0.0', '1.1.0'));
    expect(needsInstall(folder)).toBe(true);
  });

  test('does not mind line ends that git changed', () => {
    expect(installStamp('{\r\n}')).toBe(installStamp('{\n}'));
  });
});
