import { expect, test } from 'vitest';
import { behindLetters } from '../../../src/lib/bench/votes/hall-vote.js';
import { votesCsv } from '../../../src/lib/export/votes-csv.js';
import { voteRound } from '../../helpers/vote-round.js';

test('every letter of every round is a row; names that have not been shown are left out', () => {
  const shown = voteRound({
    question: 'Which is "fuller"?',
    mounts: ['Plate, open', 'Box'],
    stage: 'shown',
    hands: [12, 8],
    noise: 'clubNight',
    seen: true
  });
  const open = voteRound({ stage: 'count', hands: [3, null], sameLoudness: false, place: 'layout' });
  const names = behindLetters(shown).map((place) => ['"Plate, open"', 'Box'][place]);
  expect(votesCsv([shown, open, { ...open, ended: 'early' }], behindLetters).split('\n')).toEqual([
    'round,day,question,sound,place,noise,model,loudness,state,names_seen_before,letter,mount,hands',
    `1,2026-11-30,"Which is ""fuller""?",No. 41,hand,clubNight,wave,same loudness,shown,yes,A,${names[0]},12`,
    `1,2026-11-30,"Which is ""fuller""?",No. 41,hand,clubNight,wave,same loudness,shown,yes,B,${names[1]},8`,
    '2,2026-11-30,Which sounds fullest?,No. 41,layout,,wave,same drive,open,no,A,,3',
    '2,2026-11-30,Which sounds fullest?,No. 41,layout,,wave,same drive,open,no,B,,',
    '3,2026-11-30,Which sounds fullest?,No. 41,layout,,wave,same drive,early,no,A,,3',
    '3,2026-11-30,Which sounds fullest?,No. 41,layout,,wave,same drive,early,no,B,,',
    ''
  ]);
});
