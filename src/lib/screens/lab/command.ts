import type { AirAround } from '../../bench/air/air-around.svelte.js';
import type { Bench } from '../../bench/bench.svelte.js';
import type { Growth } from '../../bench/growth.svelte.js';
import type { Keeper } from '../../bench/keep/keeper.svelte.js';
import type { Script } from '../../bench/script/script.svelte.js';
import type { Trials } from '../../bench/trials/trials.svelte.js';
import type { Votes } from '../../bench/votes/votes.svelte.js';
import type { Sounding } from '../../bench/sounding/sounding.svelte.js';
import type { Projection } from '../parts/hall/projection.svelte.js';
import type { CommandName } from '../parts/commands-context.js';
import type { Dialogs } from './dialogs.svelte.js';
import type { Keystroke } from './keystroke.js';
import type { PresenterWindow } from './presenter-window.svelte.js';

/** What the commands work on. */
export interface Parts {
  bench: Bench;
  sounding: Pick<Sounding, 'playing' | 'silenced' | 'play' | 'stop' | 'silence'>;
  growth: Pick<Growth, 'start' | 'stop'>;
  keeper: { files: Pick<Keeper['files'], 'save' | 'pick'>; status: Pick<Keeper['status'], 'said'> };
  projection: Projection;
  air: Pick<AirAround, 'mode' | 'makePuff' | 'showTone'>;
  trials: Pick<Trials, 'shown' | 'run' | 'open' | 'leave' | 'hear' | 'answer'>;
  votes: Pick<
    Votes,
    'shown' | 'screen' | 'round' | 'open' | 'leave' | 'hear' | 'step' | 'count' | 'type' | 'goOn' | 'goBack'
  >;
  script: Pick<
    Script,
    'running' | 'scenes' | 'keep' | 'keepHere' | 'begin' | 'step' | 'back' | 'toggleBlack' | 'leave'
  >;
  presenter: Pick<PresenterWindow, 'open' | 'problem'>;
  dialogs: Dialogs;
  page: PageAround;
}

/** The little of the browser's page that commands need. */
export interface PageAround {
  /** The user wants no motion. */
  readonly still: boolean;
  /** A dialog is open, which Escape closes. */
  readonly dialogOpen: boolean;
  /** Leaves the field that is typed in, so that what is typed counts. */
  leaveField(): void;
  /** Brings the pictures of the air into view. */
  showAir(): void;
}

/** What has the page, and the keys. */
export type Where = 'bench' | 'hall' | 'run' | 'trials' | 'vote';

/** One thing that can be asked of the lab, by key or by button. */
export interface Command {
  name: CommandName;
  /** Any of these asks for it; the first is the one that is told. None: a button only. */
  keys: Keystroke[];
  /**
   * Only there: on the bench, in the hall, in the script's run, in blind trials, in a hall vote; where absent, on the bench and in the
   * hall. A run has all of the hall's, and its own first.
   */
  where?: Where | readonly Where[];
  /** In blind trials and hall votes as well. */
  blind?: boolean;
  /** While something is typed as well: a text field has no use for the key. */
  inText?: boolean;
  /** Again and again as long as the key is held. */
  held?: boolean;
  /** With single keys switched off as well. */
  always?: boolean;
  /** A plate that grows goes on growing; any other key takes over. */
  letsGrow?: boolean;
  deed: (parts: Parts) => void;
}

/** A line of the list of keys: the keys as they are written, what they do, and the commands that this tells of. */
export interface KeyLine {
  keys: string;
  does: string;
  commands: Command[];
}
