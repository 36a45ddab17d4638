import { browser } from '$app/environment';
import { MediaQuery } from 'svelte/reactivity';
import { AirAround } from '../../bench/air/air-around.svelte.js';
import { setAirAround } from '../../bench/air/air-context.js';
import { setBench } from '../../bench/bench-context.js';
import { Bench } from '../../bench/bench.svelte.js';
import { Elsewhere } from '../../bench/elsewhere.svelte.js';
import { setGrowth } from '../../bench/growth-context.js';
import { Growth } from '../../bench/growth.svelte.js';
import { setKeeper } from '../../bench/keep/keep-context.js';
import { browserParts, Keeper } from '../../bench/keep/keeper.svelte.js';
import { RecordingKeeper } from '../../bench/keep/recording-keeper.svelte.js';
import { solveShelf } from '../../bench/solve-shelf.svelte.js';
import { setSounding } from '../../bench/sounding/sounding-context.js';
import { Sounding } from '../../bench/sounding/sounding.svelte.js';
import { setScript } from '../../bench/script/script-context.js';
import { Script } from '../../bench/script/script.svelte.js';
import { setTrials } from '../../bench/trials/trials-context.js';
import { Trials } from '../../bench/trials/trials.svelte.js';
import { setVotes } from '../../bench/votes/votes-context.js';
import { Votes } from '../../bench/votes/votes.svelte.js';
import { WaveAnswers } from '../../evaluation/wave-answers.svelte.js';
import { WavePool } from '../../workers/waves/wave-pool.js';
import { sectionPicture } from '../air/section-picture.js';
import { Projection } from '../parts/hall/projection.svelte.js';
import { setCommands } from '../parts/commands-context.js';
import { setNarrow } from '../parts/layout-context.js';
import { setWaveAnswers } from '../parts/waves/wave-answers-context.js';
import { commandNamed } from './commands.js';
import { Dialogs } from './dialogs.svelte.js';
import { Keyboard } from './keyboard.svelte.js';
import { keyWords } from './keystroke.js';
import { pageAround } from './page-around.js';
import { PresenterWindow } from './presenter-window.svelte.js';

/**
 * Makes the lab's parts, lets them begin, and hands each down by its context: while the page's root is being made, whose
 * life they share.
 */
export function createLab() {
  const pool = new WavePool();
  const waves = new WaveAnswers(pool);
  const bench = new Bench(undefined, waves);
  const elsewhere = new Elsewhere(bench, waves);
  const air = new AirAround(bench, pool, sectionPicture);
  const growth = new Growth(bench);
  const kept = browserParts();
  const keeper = new Keeper(bench, kept);
  const sounding = new Sounding(bench, waves, { ready: () => !keeper.fetching, elsewhere });
  const chance = (): number => crypto.getRandomValues(new Uint32Array(1))[0];
  const trials = new Trials({ bench, sounding, chance });
  const votes = new Votes({ bench, sounding, trials, chance, today });
  const recordings = new RecordingKeeper(bench, keeper.status, kept.recordings, sounding.ownRecording);
  // The first sound is begun before the page is drawn: it is what takes longest.
  if (browser && !keeper.fetching) sounding.expect(bench.file.sound);
  const projection = new Projection();
  const script = new Script({ bench, hall: projection, air, growth, sounding });
  // First what is heard now, then the room that the loudest size needs.
  solveShelf(
    bench,
    waves,
    () => sounding.atLeisure,
    elsewhere,
    () => script.coming
  );
  sounding.connect();
  air.connect();
  keeper.connect();
  recordings.connect();
  trials.connect();
  votes.connect();
  script.connect();

  const presenter = new PresenterWindow();
  const dialogs = new Dialogs();
  const narrow = new MediaQuery('max-width: 700px');
  const parts = {
    bench,
    sounding,
    growth,
    keeper,
    projection,
    air,
    trials,
    votes,
    script,
    presenter,
    dialogs,
    page: pageAround
  };
  const commands = setCommands({
    run: (name) => commandNamed(name).deed(parts),
    keyOf: (name) => keyWords(commandNamed(name).keys[0])
  });
  setBench(bench);
  setSounding(sounding);
  setWaveAnswers(waves);
  setAirAround(air);
  setGrowth(growth);
  setKeeper(keeper);
  setTrials(trials);
  setVotes(votes);
  setScript(script);
  setNarrow(narrow);
  const keyboard = new Keyboard(parts);
  presenter.onKey = (event) => keyboard.press(event);
  return { ...parts, narrow, commands, keyboard };
}

/** The day by the clock on the wall here. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');
}
