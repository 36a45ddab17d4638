import type { Page } from '@playwright/test';

/** So many samples a tap keeps: 0.68 s at 48 kHz. */
const TAP_LENGTH = 32768;

/** Taps what goes to the device. Call before the page is opened. */
export async function tapTheDevice(page: Page): Promise<void> {
  await page.addInitScript((fftSize) => {
    const connect = AudioNode.prototype.connect as (this: AudioNode, ...values: unknown[]) => unknown;
    AudioNode.prototype.connect = function (this: AudioNode, ...values: unknown[]) {
      if (values[0] instanceof AudioDestinationNode) {
        const tap = new AnalyserNode(this.context, { fftSize });
        connect.call(this, tap);
        const all = window as unknown as { taps?: AnalyserNode[] };
        (all.taps ??= []).push(tap);
      }
      return connect.apply(this, values);
    } as typeof AudioNode.prototype.connect;
  }, TAP_LENGTH);
}
