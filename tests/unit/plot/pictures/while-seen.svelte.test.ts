import { flushSync } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { whileSeen } from '../../../../src/lib/plot/pictures/while-seen.svelte.js';

/** What the browser tells in one go: whether the element lay in the window, look by look. */
let tell: (...looks: boolean[]) => void;
let observed: unknown[];

beforeEach(() => {
  observed = [];
  vi.stubGlobal(
    'IntersectionObserver',
    class {
      constructor(told: (looks: { isIntersecting: boolean }[]) => void) {
        tell = (...looks) => told(looks.map((isIntersecting) => ({ isIntersecting })));
      }
      observe(element: unknown): void {
        observed.push(element);
      }
      disconnect(): void {
        observed.length = 0;
      }
    }
  );
});
afterEach(() => vi.unstubAllGlobals());

/** Something that is begun and ended; what became of it, in this order. */
function begun() {
  const said: string[] = [];
  const element = {} as HTMLElement;
  const end = $effect.root(() => {
    whileSeen(
      () => element,
      () => {
        said.push('begins');
        return () => said.push('ends');
      }
    );
  });
  flushSync();
  expect(observed).toEqual([element]);
  return { said, end };
}

test('what is seen is begun once and ended once', () => {
  const { said, end } = begun();
  tell(false);
  expect(said).toEqual([]);
  tell(true);
  tell(true);
  expect(said).toEqual(['begins']);
  tell(false);
  expect(said).toEqual(['begins', 'ends']);
  end();
  expect(said).toEqual(['begins', 'ends']);
  expect(observed).toEqual([]);
});

test('of several looks that a busy browser tells of at once, the latest counts', () => {
  const { said, end } = begun();
  tell(false, true);
  expect(said).toEqual(['begins']);
  tell(true, false);
  expect(said).toEqual(['begins', 'ends']);
  tell(false, true, false);
  expect(said).toEqual(['begins', 'ends']);
  end();
});

test('what is still seen ends with the component', () => {
  const { said, end } = begun();
  tell(true);
  end();
  expect(said).toEqual(['begins', 'ends']);
});
