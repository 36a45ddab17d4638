import type { Handle } from '@sveltejs/kit';
import { demoBench } from './lib/file/demo-bench.js';
import { USUAL_RATE } from './lib/sounds/blocks/sample-rate.js';
import type { GeneratedSound } from './lib/sounds/kinds.js';
import soundWorker from './lib/workers/sound/lab.worker.ts?worker&url';
import type { Asked } from './lib/workers/sound/protocol.js';

/** What static/begin.js begins before anything else of the page is there (docs/decisions/0025). */
const firstSound: { worker: string; asked: Asked } = {
  // The page may stand in any folder.
  worker: `.${soundWorker}`,
  asked: {
    id: 0,
    question: { kind: 'prepare', sound: demoBench().sound as GeneratedSound, sampleRate: USUAL_RATE }
  }
};

/** The policy of a page that is built; a page that is worked on has it elsewhere. */
const POLICY = /<meta http-equiv="content-security-policy"[^>]*>/;

/** Where pages are made: tells them what to begin with, and that behind the policy. */
export const handle: Handle = ({ event, resolve }) =>
  resolve(event, {
    transformPageChunk: ({ html }) => {
      const [policy = ''] = POLICY.exec(html) ?? [];
      return html
        .replace(policy, '')
        .replace('%policy%', () => policy)
        .replace('%first-sound%', () => attribute(JSON.stringify(firstSound)));
    }
  });

function attribute(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;');
}
