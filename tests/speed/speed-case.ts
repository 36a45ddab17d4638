/** One thing whose time is taken. */
export interface SpeedCase {
  name: string;
  /** Seconds of sound that it makes, where it makes any. */
  sound?: number;
  /** Makes everything ready and returns what is timed. */
  prepare: () => () => unknown;
}
