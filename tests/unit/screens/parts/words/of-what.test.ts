import { expect, it } from 'vitest';
import { ofWhat } from '../../../../../src/lib/screens/parts/words/sound-words.js';
import { LINESIDE, MACHINES, TEST_SIGNALS } from '../../../../../src/lib/sounds/roster.js';

it('only diesels, steam engines and electrics are called an engine', () => {
  const engines = ['diesel', 'steam', 'electric'];
  const recording = { kind: 'recording', name: 'engine.wav' } as const;
  for (const sound of [...MACHINES, ...LINESIDE, ...TEST_SIGNALS, recording])
    expect(ofWhat(sound), sound.name).toBe(engines.includes(sound.kind) ? 'engine' : 'sound');
});
