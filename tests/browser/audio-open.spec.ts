import { expect, test } from '@playwright/test';
import { told } from '../helpers/told.js';

const stubs = {
  'no Web Audio': {
    stub: () => {
      for (const name of ['AudioContext', 'webkitAudioContext']) Reflect.deleteProperty(window, name);
    },
    message:
      'This browser cannot play computed sound; open this page in a current Chrome, Edge, Firefox or Safari.'
  },
  'a device that never asks for a sample': {
    stub: () => Object.defineProperty(BaseAudioContext.prototype, 'currentTime', { get: () => 0 }),
    message:
      'No sound device answers; plug in headphones or choose an output in the system settings, then press play again.'
  },
  'no device at all': {
    stub: () => {
      window.AudioContext = class {
        constructor() {
          throw new DOMException('no output device', 'NotSupportedError');
        }
      } as unknown as typeof AudioContext;
    },
    message:
      'No sound device answers; plug in headphones or choose an output in the system settings, then press play again.'
  }
};
for (const [name, { stub, message }] of Object.entries(stubs))
  test(`${name}: one sentence says what to do`, async ({ page }) => {
    await page.addInitScript(stub);
    expect(await told(page, () => page.goto('/#open'))).toMatchObject({
      name: 'SoundUnavailable',
      message
    });
  });

test('a machine that does not allow the rate is taken as it is', async ({ page }) => {
  await page.addInitScript(() => {
    const Native = window.AudioContext;
    window.AudioContext = class extends Native {
      constructor(options?: AudioContextOptions) {
        if (options?.sampleRate) throw new DOMException('the rate of the device only', 'NotSupportedError');
        super({ ...options, sampleRate: 44100 });
      }
    };
  });
  expect(await told(page, () => page.goto('/#open'))).toEqual({ state: 'running', sampleRate: 44100 });
});
