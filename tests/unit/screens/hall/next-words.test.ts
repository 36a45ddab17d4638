import { expect, it } from 'vitest';
import { models } from '../../../../src/lib/evaluation/models.js';
import { commandNamed } from '../../../../src/lib/screens/lab/commands.js';
import { nextWords } from '../../../../src/lib/screens/hall/next-words.js';

it.each(['wave', 'rule'] as const)('says what the command does next, all the way round: %s', (model) => {
  const air = {
    mode: 'tone' as 'tone' | 'puff',
    makePuff: () => void (air.mode = 'puff'),
    showTone: () => void (air.mode = 'tone')
  };
  const projection = { air: false };
  const seen = (): string =>
    !projection.air ? 'the curves' : air.mode === 'tone' ? 'a tone in the air' : 'one push of the cone';
  for (let i = 0; i < 6; i++) {
    const promised = nextWords(projection.air, air.mode, models[model].field);
    commandNamed('air in the hall').deed({ bench: { model }, projection, air } as never);
    expect(promised).toBe(`to see ${seen()}`);
  }
});
