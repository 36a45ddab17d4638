/** One thing whose time is taken. */
export interface SpeedCase {
  name: string;
  /** Makes everything ready and returns what is timed. */
  prepare: () => () => unknown;
}
