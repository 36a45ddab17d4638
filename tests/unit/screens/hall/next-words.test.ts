import { expect, it } from 'vitest';
import { commandNamed } from '../../../../src/lib/screens/lab/commands.js';
import { nextWords } from '../../../../src/lib/screens/hall/next-words.js';

it('says what the command does next, all the way round', () => {
  const air = {
    mode: 'tone' as 'tone' | 'puff',
    makePuff: () => void (air.mode = 'puff'),
    showTone: () => void (air.mode = 'tone')
  };
  const parts = { bench: { setModel: () => {} }, projection: { air: false }, air };
  const seen = (): string =>
    !parts.projection.air ? 'the curves' : air.mode === 'tone' ? 'a tone in the air' : 'one push of the cone';
  for (let i = 0; i < 6; i++) {
    const promised = nextWords(parts.projection.air, air.mode);
    commandNamed('air in the hall').deed(parts as never);
    expect(`next: ${seen()}`).toBe(promised);
  }
});
