import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { neededNode, nodeSentence, nodeSuffices } from '../../../src/cli/check-node.mjs';

const root = path.join(import.meta.dirname, '../../..');

test('the versions are those of package.json', () => {
  const { engines } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
  expect(engines.node).toBe(neededNode);
});

test.each(['20.19.0', '20.20.2', '22.12.0', '22.20.1', '24.0.0', '25.1.0', '30.0.0'])(
  'Node %s suffices',
  (version) => {
    expect(nodeSuffices(version)).toBe(true);
    expect(nodeSentence(version)).toBeNull();
  }
);

test.each(['12.22.1', '18.20.8', '20.18.9', '21.7.3', '22.11.0', '23.11.0'])(
  'Node %s does not suffice, and one sentence says so',
  (version) => {
    expect(nodeSuffices(version)).toBe(false);
    expect(nodeSentence(version)).toMatch(
      new RegExp(`^Backwave needs Node 20\\.19.*this is Node ${version}: get.*https://nodejs\\.org.*\\.$`)
    );
  }
);

test.each(['start', 'test', 'predict', 'speed'])(
  '%s asks for the version before it imports anything else, in words that an old Node can read',
  (command) => {
    const text = readFileSync(path.join(root, `src/cli/${command}.mjs`), 'utf8');
    expect(text.match(/^import .*/gm)).toEqual(["import { checkNode } from './check-node.mjs';"]);
    const check = readFileSync(path.join(root, 'src/cli/check-node.mjs'), 'utf8');
    // newer than ECMAScript 2018, or module names that Node 12 does not know
    for (const script of [text, check]) expect(script).not.toMatch(/\?\.|\?\?|^await|node:|replaceAll|#\w+/m);
  }
);
