import { expect, it } from 'vitest';
import { Refusal } from '../../../../src/lib/screens/parts/refusal.svelte.js';

it('keeps a sentence until something is accepted', () => {
  const refusal = new Refusal();
  expect(refusal.sentence).toBeNull();
  expect(refusal.take('width must be a number')).toBe(false);
  expect(refusal.sentence).toBe('width must be a number');
  expect(refusal.take(null)).toBe(true);
  expect(refusal.sentence).toBeNull();
});

it('drops the sentence when its value changes in another way', () => {
  let width = 5;
  const refusal = new Refusal(() => width);
  refusal.take('width must be within 1 … 9, got 12');
  expect(refusal.sentence).toContain('got 12');
  width = 6;
  expect(refusal.sentence).toBeNull();
});
