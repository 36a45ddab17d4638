/** One thing whose time is taken. */
export interface SpeedCase {
  name: string;
  /** Seconds of sound that it made when it ran last, where it makes any. */
  sound?: () => number;
  /** Makes everything ready and returns what is timed. */
  prepare: () => () => unknown;
  /** The same with less of it, to see that it runs. */
  prepareLittle?: () => () => unknown;
}
