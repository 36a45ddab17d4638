import { describe, expect, test } from 'vitest';
import { NewestWins, type NewestWinsOptions } from '../../../../src/lib/workers/link/newest-wins.js';
import { aTurn } from '../../../helpers/a-turn.js';

/** A line whose tasks the test ends by name, and what it has seen of them. */
function line(replaces: NewestWinsOptions['replaces']) {
  const seen: string[] = [];
  const ends = new Map<string, { well: () => Promise<void>; badly: () => Promise<void> }>();
  const signals = new Map<string, AbortSignal>();
  const newest = new NewestWins({ replaces, tell: (error) => seen.push(`told ${(error as Error).message}`) });
  const run = (name: string): void =>
    newest.run(async (signal) => {
      seen.push(`${name} begins`);
      signals.set(name, signal);
      await new Promise<void>((resolve, reject) =>
        ends.set(name, {
          well: () => (resolve(), aTurn()),
          badly: () => (reject(new Error(name)), aTurn())
        })
      );
      seen.push(signal.aborted ? `${name} ends, replaced` : `${name} ends`);
    });
  return {
    newest,
    run,
    seen,
    end: (name: string) => ends.get(name)!,
    signal: (name: string) => signals.get(name)!
  };
}

describe('what replaces only a task that waits', () => {
  test('a task begins at once where none runs', async () => {
    const { run, seen, end } = line('waiting');
    run('a');
    expect(seen).toEqual(['a begins']);
    await end('a').well();
    run('b');
    expect(seen).toEqual(['a begins', 'a ends', 'b begins']);
  });

  test('one runs at a time, to its end; of those that come meanwhile the newest runs next', async () => {
    const { run, seen, end } = line('waiting');
    for (const name of ['a', 'b', 'c', 'd']) run(name);
    expect(seen).toEqual(['a begins']);
    await end('a').well();
    expect(seen).toEqual(['a begins', 'a ends', 'd begins']);
    await end('d').well();
    expect(seen).toEqual(['a begins', 'a ends', 'd begins', 'd ends']);
  });

  test('what waits is forgotten when it is withdrawn, and what runs is finished', async () => {
    const { newest, run, seen, end } = line('waiting');
    run('a');
    run('b');
    newest.withdraw();
    await end('a').well();
    expect(seen).toEqual(['a begins', 'a ends']);
    run('c');
    expect(seen).toContain('c begins');
  });

  test('an error is told unless a newer task waits, which runs after it', async () => {
    const { run, seen, end } = line('waiting');
    run('a');
    await end('a').badly();
    expect(seen).toEqual(['a begins', 'told a']);
    run('b');
    run('c');
    await end('b').badly();
    expect(seen.slice(2)).toEqual(['b begins', 'c begins']);
  });
});

describe('what replaces the task that runs', () => {
  test('a newer task aborts it and begins at once', async () => {
    const { run, seen, end, signal } = line('running');
    run('a');
    run('b');
    expect(seen).toEqual(['a begins', 'b begins']);
    expect(signal('a').aborted).toBe(true);
    expect(signal('b').aborted).toBe(false);
    await end('a').well();
    expect(seen.at(-1)).toBe('a ends, replaced');
    expect(signal('b').aborted).toBe(false);
    await end('b').well();
    expect(seen.at(-1)).toBe('b ends');
  });

  test('its late error is told to nobody, the newest one’s is', async () => {
    const { run, seen, end } = line('running');
    run('a');
    run('b');
    await end('a').badly();
    await end('b').badly();
    expect(seen).toEqual(['a begins', 'b begins', 'told b']);
  });

  test('what runs is given up when it is withdrawn, without a word', async () => {
    const { newest, run, seen, end, signal } = line('running');
    run('a');
    newest.withdraw();
    expect(signal('a').aborted).toBe(true);
    await end('a').badly();
    expect(seen).toEqual(['a begins']);
    run('b');
    await end('b').well();
    expect(seen).toEqual(['a begins', 'b begins', 'b ends']);
  });
});

for (const replaces of ['waiting', 'running'] as const) {
  test(`at the end of a task what it left under way is given up (${replaces})`, async () => {
    const { run, end, signal } = line(replaces);
    run('a');
    await end('a').badly();
    expect(signal('a').aborted).toBe(true);
    run('b');
    await end('b').well();
    expect(signal('b').aborted).toBe(true);
  });

  test(`a task that fails before it waits is told of as any other (${replaces})`, async () => {
    const told: unknown[] = [];
    const newest = new NewestWins({ replaces, tell: (error) => told.push(error) });
    newest.run(() => {
      throw new Error('at once');
    });
    await aTurn();
    expect(told).toEqual([new Error('at once')]);
  });
}

describe('with a pause before a task begins', () => {
  for (const replaces of ['waiting', 'running'] as const)
    test(`of what comes within it the newest alone runs (${replaces})`, async () => {
      const ran: string[] = [];
      const ends: (() => void)[] = [];
      const pause = () => new Promise<void>((resolve) => ends.push(resolve));
      const newest = new NewestWins({ replaces, pause, tell: (error) => ran.push(String(error)) });
      const run = (name: string) =>
        newest.run(async () => {
          ran.push(name);
        });
      for (const name of ['a', 'b', 'c']) run(name);
      // A pause that begins anew with each, or one for all of them.
      expect(ends.length).toBe(replaces === 'running' ? 3 : 1);
      expect(ran).toEqual([]);
      for (const end of ends) end();
      await aTurn();
      expect(ran).toEqual(['c']);
      run('d');
      newest.withdraw();
      ends.at(-1)!();
      await aTurn();
      expect(ran).toEqual(['c']);
      run('e');
      ends.at(-1)!();
      await aTurn();
      expect(ran).toEqual(['c', 'e']);
    });
});

test('lines know nothing of each other', async () => {
  const [one, other] = [line('waiting'), line('waiting')];
  one.run('a');
  other.run('b');
  expect(other.seen).toEqual(['b begins']);
  await one.end('a').well();
  expect(one.seen).toEqual(['a begins', 'a ends']);
});
