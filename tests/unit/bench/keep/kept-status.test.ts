import { expect, it } from 'vitest';
import { demoKeeping, newKeeping, type Keeping } from '../../../../src/lib/bench/keep/keeping.js';
import { KeptStatus, type KeptState } from '../../../../src/lib/bench/keep/kept-status.svelte.js';
import { handleOf } from '../../../helpers/kept-tab.js';

const theirs = { id: 'a', name: 'Yard', text: '{}', stamp: 'b', keptAt: 0 };

it.each<[string, Partial<Keeping>, KeptState]>([
  ['the demo bench', demoKeeping(), 'demo'],
  ['a bench that is nowhere yet', newKeeping('Yard'), 'new'],
  ['a bench in the store', { ...newKeeping('Yard'), text: '{}' }, 'kept'],
  ['one that another tab has written', { ...newKeeping('Yard'), text: '{}', overtaken: theirs }, 'overtaken']
])('%s', (_, keeping, state) => {
  const status = new KeptStatus();
  status.show(keeping as Keeping);
  expect([status.state, status.name]).toEqual([state, keeping.name]);
  expect(status.current).toBe(state === 'demo' ? null : keeping.id);
});

it('waits only with what was kept', () => {
  const status = new KeptStatus();
  status.waits();
  expect(status.state).toBe('demo');
  status.show({ ...newKeeping('Yard'), text: '{}' });
  status.waits();
  expect(status.state).toBe('waiting');
});

it('stays refused whatever is shown next, but for the demo bench and another tab’s work', () => {
  const status = new KeptStatus();
  status.refuse('The store is full.');
  status.show({ ...newKeeping('Yard'), text: '{}' });
  expect([status.state, status.problem]).toEqual(['refused', 'The store is full.']);
  status.show(demoKeeping());
  expect(status.state).toBe('demo');
});

it('knows the file that is open', () => {
  const status = new KeptStatus();
  status.show(newKeeping('Yard', handleOf('yard.json')));
  expect(status.fileOpen).toBe('yard.json');
  status.show(newKeeping('Yard'));
  expect(status.fileOpen).toBeNull();
});

it('forgets what was said of the last thing asked, and tells what the store refuses of this one', async () => {
  const status = new KeptStatus();
  [status.said, status.fileProblem] = ['Saved.', 'Not opened.'];
  expect(await status.asked(async () => 3)).toBe(3);
  expect([status.said, status.fileProblem, status.problem]).toEqual([null, null, null]);
  const full = new DOMException('no room', 'QuotaExceededError');
  expect(await status.asked(() => Promise.reject(full))).toBeNull();
  expect(status.problem).toContain('store is full');
});
