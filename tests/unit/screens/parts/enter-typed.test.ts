import { expect, it } from 'vitest';
import { enterTyped, type Rewritten } from '../../../../src/lib/screens/parts/enter-typed.js';
import { Refusal } from '../../../../src/lib/screens/parts/refusal.svelte.js';

/** What stands in the field after `typed` was entered for a width of 1 … 9, which was 5. */
function after(typed: string, rewritten: Rewritten) {
  let width = 5;
  const refusal = new Refusal();
  const field = { value: typed };
  const enter = (text: string): string | null => {
    const number = Number(text);
    if (!(number >= 1 && number <= 9)) return `width must be within 1 … 9, got ${text}`;
    width = number;
    return null;
  };
  const drawn = () => void (field.value = width.toFixed(1));
  enterTyped(field, { enter, figure: () => width.toFixed(1), rewritten, refusal }, drawn);
  return { field: field.value, width, sentence: refusal.sentence };
}

it.each<[Rewritten, string, string]>([
  ['accepted', '7', '7.0'],
  ['accepted', '12', '12'],
  ['refused', '7', '7'],
  ['refused', '12', '5.0'],
  ['always', '7', '7.0'],
  ['always', '12', '5.0']
])('rewritten %s: %s leaves %s in the field', (rewritten, typed, left) => {
  expect(after(typed, rewritten).field).toBe(left);
});

it('takes what is accepted and says what is refused, whatever is left in the field', () => {
  for (const rewritten of ['accepted', 'refused', 'always'] as const) {
    expect(after('7', rewritten)).toMatchObject({ width: 7, sentence: null });
    expect(after('12', rewritten)).toMatchObject({
      width: 5,
      sentence: 'width must be within 1 … 9, got 12'
    });
  }
});
