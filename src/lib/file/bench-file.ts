import type { Air } from '../acoustics/air.js';
import type { Listener } from '../acoustics/listener.js';
import type { Board } from '../acoustics/mounts/board.js';
import type { Mount } from '../acoustics/mounts/mount.js';
import type { Second } from '../acoustics/mounts/second.js';
import type { Amplifier, Drive } from '../acoustics/speaker/drive.js';
import type { Lift } from '../acoustics/speaker/lift.js';
import type { Motor, Speaker } from '../acoustics/speaker/speaker.js';
import type { Vehicle } from '../fitting/vehicle.js';
import type { GeneratedSound } from '../sounds/kinds.js';
import type { PlaceKind } from '../sounds/places/place-spectra.js';
import type { Decibels, Metres, Seconds } from '../units.js';
import type { BlindRun } from './blind-run.js';
import type { Scene } from './scene.js';
import type { VoteRound } from './vote-round.js';

/** What `format` says in every bench file. */
export const BENCH_FORMAT = 'backwave-bench';

/** The models one can choose between; what each can do stands in `evaluation/`. */
export const NAMED_MODELS = ['rule', 'wave'] as const;
export type ModelName = (typeof NAMED_MODELS)[number];
/** What a bench opens with (docs/decisions/0020). */
export const OPENING_MODEL: ModelName = 'wave';

/**
 * A speaker of the file: one without motor values can only be asked for the mount alone (`ideal`). Its price is in whatever money the user
 * counts.
 */
export type BenchSpeaker = Omit<Speaker, 'motor'> & { motor?: Motor; price?: number };

/** One mount on the shelf with the speaker in it; `speaker` is a key of the file's speakers. */
export interface Setup {
  name: string;
  speaker: string;
  mount: Mount;
  /** 90 lays the speaker's length across the mount. */
  turn: 0 | 90;
  /** Over the board, where there is one: the usual height of its kind unless told (`usualAbove`), and up unless told. */
  above?: Metres;
  facing?: Board['facing'];
  second?: Second;
  /** Thickness of plate or walls, for the outside sizes; the usual one unless told. */
  wall?: Metres;
  /** What the mount costs beside its speakers; the usual share of their price unless told. */
  price?: number;
  notes: string;
}

/** A file of the user's own, and the stretch of it that plays; without one it is the first minute. */
export interface BenchRecording {
  kind: 'recording';
  name: string;
  from?: Seconds;
  until?: Seconds;
}

/** The sound on the bench. A recording is named, not held: the file stays small and private. */
export type BenchSound = GeneratedSound | BenchRecording;

/** The model that a speaker is wanted for, and the sounds it makes; none: the bench's own. */
export interface BenchModel extends Vehicle {
  sounds: GeneratedSound[];
}

/** The noise of the place where it will run. */
export interface BenchNoise {
  place: PlaceKind;
  /** A-weighted, dB re 20 µPa. */
  levelDb: Decibels;
  /** Whether it is heard behind the engine. */
  heard: boolean;
}

/** How the page shows it; the numbers are places in `setups`, counted from 0. */
export interface BenchView {
  heard: number;
  measuredAgainst: number;
  inches: boolean;
  /** Which model draws and plays the mounts: the rule of thumb or the wave solution. */
  model: ModelName;
  /** Whether the response picture tells its levels in dB re 20 µPa where one listens, at the drive. */
  realLevel?: boolean;
  /** Whether all mounts are played as loud as the quietest of them; the true differences stay on the screen. */
  sameLoudness: boolean;
}

/**
 * What the user works on, as one plain value with every default filled in: the thing that is saved,
 * shared, undone and given to the command line (docs/file-format.md).
 */
export interface BenchFile {
  format: typeof BENCH_FORMAT;
  /** Always the newest (versions/). */
  version: number;
  air: Air;
  speakers: Record<string, BenchSpeaker>;
  setups: Setup[];
  listener: Listener;
  /** How hard all are driven, where it is said: levels in pascals, travel and heat follow from it. */
  drive?: Drive;
  amplifier?: Amplifier;
  /** What lifts the low end before the amplifier; nothing unless told. */
  lift?: Lift;
  /** What the speakers are tried in, where it is said. */
  model?: BenchModel;
  sound: BenchSound;
  noise?: BenchNoise;
  view: BenchView;
  /** Blind trials, oldest first; only the last can be under way. */
  trials?: BlindRun[];
  /** What is shown to a hall, scene by scene. */
  script?: Scene[];
  /** Rounds of hall votes, oldest first; only the last can be open. */
  votes?: VoteRound[];
}
