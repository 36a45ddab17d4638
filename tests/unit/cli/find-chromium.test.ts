import { afterEach, describe, expect, it, vi } from 'vitest';
import { findChromium } from '../../../src/cli/find-chromium.mjs';

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
});
