import type { Mount } from '../acoustics/mounts/mount.js';
import type { Seconds } from '../units.js';
import type { Bench } from './bench.svelte.js';
import { knobsOf, withKnob } from '../acoustics/mounts/size-knobs.js';

/** A plate grows from the speaker's rim to its largest size in this time. */
const GROWING: Seconds = 6;

/** With reduced motion it grows in so many steps. */
const STEPS = 6;

/** Calls back at the next frame of the screen with its time in milliseconds. */
export interface FrameClock {
  request(frame: (now: number) => void): number;
  cancel(request: number): void;
}

const screenFrames: FrameClock = {
  request: (frame) => requestAnimationFrame(frame),
  cancel: (request) => cancelAnimationFrame(request)
};

/** Lets the plate grow by itself from the speaker's rim to the knobs' end, heard and seen; any touch takes over. */
export class Growth {
  growing = $state(false);
  /** The plate as it was before it grew, to be put back; null once it was or where nothing grew. */
  before = $state.raw<{ index: number; mount: Mount } | null>(null);

  #bench: Bench;
  #clock: FrameClock;
  #frame = 0;

  constructor(bench: Bench, clock: FrameClock = screenFrames) {
    this.#bench = bench;
    this.#clock = clock;
  }

  /** Hears the first plate on the shelf and lets it grow. */
  start(inSteps: boolean): void {
    const plate = this.#bench.stands.find(({ setup, problem }) => setup.mount.kind === 'plate' && !problem);
    if (!plate) return;
    this.stop();
    this.#bench.hear(plate.index);
    this.growing = true;
    this.#bench.dragging = true;
    const { mount } = plate.setup;
    this.before ??= { index: plate.index, mount };
    let begun: number | null = null;
    let shown = -1;
    const step = (now: number): void => {
      // From the first frame on, so that a slow machine starts at the rim as well.
      begun ??= now;
      const share = Math.min(1, (now - begun) / 1000 / GROWING);
      const drawn = inSteps ? Math.floor(share * STEPS) / STEPS : share;
      if (drawn !== shown) this.#bench.setMount(this.#grown(mount, drawn));
      shown = drawn;
      if (share < 1) this.#frame = this.#clock.request(step);
      else this.stop();
    };
    this.#frame = this.#clock.request(step);
  }

  stop(): void {
    if (!this.growing) return;
    this.#clock.cancel(this.#frame);
    this.growing = false;
    this.#bench.dragging = false;
  }

  /** Gives the plate the sizes it had before it grew. */
  putBack(): void {
    this.stop();
    if (!this.before) return;
    this.#bench.hear(this.before.index);
    this.#bench.setMount(this.before.mount);
    this.before = null;
  }

  /** The mount with the speaker in its middle and all sizes this share of the way to the knobs' ends. */
  #grown(mount: Mount, share: number): Mount {
    const installation = { ...this.#bench.heard.installation, mount };
    let grown = withKnob(withKnob(mount, 'offsetLength', 0), 'offsetWidth', 0);
    for (const { key, min, max } of knobsOf({ ...installation, mount: grown }))
      if (key !== 'offsetLength' && key !== 'offsetWidth')
        grown = withKnob(grown, key, min + (max - min) * share);
    return grown;
  }
}
