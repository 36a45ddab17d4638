import { findChromium } from '../../src/cli/find-chromium.mjs';

/** How the tests start the browser of this machine: quiet, and without the sandbox where it cannot have one. */
export function launchOptions(...more: string[]): { executablePath: string | undefined; args: string[] } {
  return {
    executablePath: findChromium() ?? undefined,
    args: [
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--disable-quic',
      '--no-first-run',
      ...more
    ]
  };
}

/** Lets sound start without a click. */
export const AUTOPLAY = '--autoplay-policy=no-user-gesture-required';

/**
 * The engine's last compiler is left out: a page that lives for seconds gives it a quarter of its time and gets nothing back.
 * Answers are the same; sound and speed are looked at with it.
 */
export const SHORT_LIVED = '--js-flags=--no-turbofan';
