import type { StillKind } from '../sound-kind.js';
import { SLACK_KNOBS, type Slack } from './slack.js';

/** Slack that runs out along a train. */
export const SLACK_KIND: StillKind<Slack> = {
  knobs: SLACK_KNOBS,
  marks: () => []
};
