import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { findChromium, places } from '../../../src/cli/find-chromium.mjs';
import { temporaryFolder } from '../../helpers/temporary-folder.js';

describe('findChromium', () => {
  afterEach(() => vi.unstubAllEnvs());

  it('takes the browser that the environment names', () => {
    vi.stubEnv('CHROMIUM_PATH', process.execPath);
    expect(findChromium()).toBe(process.execPath);
  });

  it('goes on looking when that is no file that can be run', () => {
    for (const path of ['', '/no/such/browser', import.meta.dirname]) {
      vi.stubEnv('CHROMIUM_PATH', path);
      expect(findChromium()).not.toBe(path);
    }
  });

  it('takes one without a window before any other, and the newest of those that were downloaded', () => {
    const cache = temporaryFolder();
    for (const name of ['chromium-12', 'chromium_headless_shell-9', 'chromium_headless_shell-10'])
      mkdirSync(path.join(cache, name));
    vi.stubEnv('PLAYWRIGHT_BROWSERS_PATH', cache);
    vi.stubEnv('CHROMIUM_PATH', '/the/named/one');
    const all = places();
    const first = (part: string) => all.findIndex((place) => place.includes(part));
    const order = ['named', 'chromium_headless_shell-10', 'chromium_headless_shell-9', 'chromium-12'].map(
      first
    );
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order[0]).toBe(0);
    expect(order[3]).toBeGreaterThan(order[2]);
    for (const full of all.filter((place) =>
      /[\\/](chrome|chromium|google-chrome|msedge)(\.exe)?$/i.test(place)
    ))
      expect(all.indexOf(full)).toBeGreaterThan(order[2]);
  });
});
