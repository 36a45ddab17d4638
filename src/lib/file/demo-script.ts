import { PLACES } from '../acoustics/listener.js';
import type { Mount } from '../acoustics/mounts/mount.js';
import { usualSound } from '../sounds/roster.js';
import type { MovingSound } from '../sounds/kinds.js';
import { OPENING_MODEL, type Setup } from './bench-file.js';
import { DEMO_MOUNTS } from './demo-bench.js';
import { RUNNING_CAB } from './layout-bench.js';
import type { Scene, SceneHeard, SceneShows } from './scene.js';

/** A plate that is little larger than its speaker. */
const SMALL_PLATE: Mount = { kind: 'plate', shape: 'rectangle', length: 0.06, width: 0.06, offset: [0, 0] };
/** The tone whose waves are shown: low enough that the way round is all that counts. */
const TONE = 300;
/** The engine as it pulls away. */
const PULLING: MovingSound = { ...(usualSound('diesel') as MovingSound), notch: 5 };

const FREE = mounted('Free air', DEMO_MOUNTS.free);
const PLATE = mounted('Flat plate', DEMO_MOUNTS.plate);
const CAB = mounted('Cab body', DEMO_MOUNTS.shell);
const BOX = mounted('Closed box', DEMO_MOUNTS.box);

/**
 * Ten minutes for a hall that go through the whole subject, on the demo bench of the Carrow & Eastmoor. Every figure that is said in it is
 * worked out by its test.
 */
export function demoScript(): Scene[] {
  return structuredClone([
    told(
      'Welcome',
      0.3,
      'What would my speaker\nsound like,\nmounted like this?',
      'Before the hall comes in: press Space, answer the question for headphones, and set the volume for the last row. The engine is no. 41, a cab diesel of the Carrow & Eastmoor.'
    ),
    shown(
      'The bare speaker',
      0.5,
      'curves',
      FREE,
      'Thin, is it not? Low down there is hardly anything left of the engine. It is not the speaker’s fault.'
    ),
    told(
      'Why it is thin',
      0.5,
      'The back of the cone pushes\nwhen the front pulls.\n\nThe air runs round the edge,\nand both are gone.',
      'Move your flat hand to and fro as the cone, and show the way round with the other.'
    ),
    shown(
      'Round the edge',
      0.5,
      'tone',
      FREE,
      'One colour is push, the other pull. The way round this little frame is 28 mm. A low note has all the time it needs for it.'
    ),
    shown(
      'One push of the cone',
      0.5,
      'puff',
      FREE,
      'One push alone. Watch the air from the back come round and fill the hole that the front leaves.'
    ),
    told(
      'The cure',
      0.4,
      'Make the way round longer.\n\nTwice as far:\n6 dB more of the low notes.',
      'The way from front to back, round the nearest edge. That is the whole secret of a plate.'
    ),
    shown(
      'A small plate',
      0.4,
      'curves',
      mounted('Flat plate', SMALL_PLATE),
      'The same speaker on 60 by 60 mm. The way round is 60 mm now.'
    ),
    shown(
      'A large plate',
      0.7,
      'curves',
      PLATE,
      'On 152 by 102 mm the way round is 102 mm. At 300 Hz that is 13 dB more than the bare speaker. Shift G grows the plate from the speaker’s rim, R brings it back.'
    ),
    shown(
      'Less goes round',
      0.5,
      'tone',
      PLATE,
      'The same tone as before. Front and back meet much farther out.'
    ),
    told(
      'A body is a plate',
      0.3,
      'A body is a plate,\nfolded down at its sides.',
      'Fold a sheet of paper before their eyes.'
    ),
    shown(
      'The cab body',
      0.6,
      'curves',
      CAB,
      'No. 41: no baffle at all, the roof and the sides are the plate. At 300 Hz it does as well as the flat one, within 1 dB. And there is a hump.'
    ),
    shown(
      'The body rings',
      0.5,
      'puff',
      CAB,
      'The air inside swings on like that in an organ pipe: at about 1500 Hz. That is the hump, and it is what sounds like a tin.'
    ),
    shown(
      'The closed box',
      0.5,
      'curves',
      BOX,
      'Nothing comes round any more: nothing cancels. But so little air behind the cone is stiff: it lifts the resonance from 350 to 540 Hz.'
    ),
    shown(
      'Under load',
      0.5,
      'curves',
      BOX,
      'The same box, and the engine pulls away: the lever is at notch 5.',
      { sound: PULLING }
    ),
    told(
      'Which is better?',
      0.3,
      'Louder always seems better.\n\nSo hear them equally loud.',
      'Ask for hands after the next two scenes, not before.'
    ),
    shown(
      'The plate, equally loud',
      0.5,
      'curves',
      PLATE,
      'Now all are as loud as the softest. Listen to the tone alone. Keys 1 to 4 go through all of them.',
      { sameLoudness: true }
    ),
    shown('The box, equally loud', 0.5, 'curves', BOX, 'And the box. Hands up: who likes this one better?', {
      sameLoudness: true
    }),
    told(
      'On the layout',
      0.3,
      'In the hand is not\non the layout.\n\nThe board plays, too.',
      'From here on we listen from the side, over the board.'
    ),
    shown(
      'The plate over the board',
      0.4,
      'curves',
      PLATE,
      'At 300 Hz the board takes 12 dB from the plate: what comes back from it is the opposite.',
      { listener: PLACES.layout }
    ),
    shown(
      'As it runs',
      0.4,
      'curves',
      mounted('No. 41 as it runs', RUNNING_CAB),
      'The body with its chassis in, 14 mm above the board: what was open below is nearly shut.',
      { listener: PLACES.layout }
    ),
    shown(
      'The box over the board',
      0.4,
      'curves',
      BOX,
      'The box gains 6 dB by the board. The ranking has turned over.',
      { listener: PLACES.layout }
    ),
    told(
      'What to do at home',
      0.5,
      'Keep front and back apart.\nUse the body as the plate.\nClose what can be closed:\na paper’s gap spoils a box.\nThen listen, equally loud.',
      'Questions. Any of the scenes comes back with Page Up.'
    )
  ]);
}

function mounted(name: string, mount: Readonly<Mount>): Setup {
  return { name, speaker: 'oval', turn: 0, notes: '', mount: structuredClone(mount) as Mount };
}

function told(name: string, minutes: number, text: string, notes: string): Scene {
  return { name, minutes, shows: 'text', text, notes };
}

function shown(
  name: string,
  minutes: number,
  shows: SceneShows,
  setup: Setup,
  notes: string,
  heard: Partial<SceneHeard> = {}
): Scene {
  return {
    name,
    minutes,
    shows,
    heard: {
      setup,
      sound: usualSound('diesel'),
      listener: PLACES.hand,
      model: OPENING_MODEL,
      sameLoudness: false,
      ...heard
    },
    ...(shows === 'tone' && { frequency: TONE }),
    notes
  };
}
