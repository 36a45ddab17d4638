import type { KnobKey } from '../acoustics/mounts/every-knob.js';
import type { Knob } from '../acoustics/mounts/size-knobs.js';
import type { Metres } from '../units.js';

/** The sizes of one mount as the handles on its drawing turn them. */
export interface SizesInHand {
  /** The mount's name. */
  name: string;
  knobs: readonly Knob<KnobKey>[];
  /** The knob that is in hand, if any. */
  inHand: KnobKey | null;
  /** The nearest way round from the front to the back, where there is one. */
  string: Metres | null;
  /** Lengths are written in inches. */
  inches: boolean;
  /** A handle has been taken in hand. */
  ontake: (key: KnobKey) => void;
  /** A drag has begun or has ended. */
  ondrag: (dragging: boolean) => void;
  /** A size is turned, as far as it goes. */
  onpush: (key: KnobKey, value: Metres) => void;
}
