import { createRawSnippet } from 'svelte';
import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import Dialog from '../../../../src/lib/screens/parts/Dialog.svelte';
import Drawer from '../../../../src/lib/screens/parts/Drawer.svelte';
import NumberField from '../../../../src/lib/screens/parts/NumberField.svelte';
import { Refusal } from '../../../../src/lib/screens/parts/refusal.svelte.js';

const children = createRawSnippet(() => ({ render: () => '<p>inside</p>' }));
/** The start tag of the first element of this name. */
const tag = (html: string, name: string) => new RegExp(`<${name}\\b[^>]*>`).exec(html)?.[0] ?? '';

describe('NumberField', () => {
  const refusal = new Refusal();
  refusal.take('width must be a number');
  const field = {
    figure: '12.5',
    enter: () => null,
    rewritten: 'accepted',
    refusal,
    id: 'w',
    name: 'width'
  } as const;

  it('is described by the refusal beneath it, which is an alert', () => {
    const { body } = render(NumberField, { props: { ...field, beneath: true } });
    expect(tag(body, 'input')).toMatch(
      /id="w".*value="12.5".*aria-invalid="true" aria-describedby="w-problem"/
    );
    expect(body).toMatch(/<p class="problem[^"]*" id="w-problem" role="alert">width must be a number<\/p>/);
  });

  it('keeps the description that it has, and is not invalid without a refusal', () => {
    const props = { ...field, refusal: new Refusal(), beneath: true, describedby: 'range' };
    const { body } = render(NumberField, { props });
    expect(tag(body, 'input')).toMatch(/aria-invalid="false" aria-describedby="range"/);
    expect(body).not.toContain('alert');
  });

  it('says nothing of a refusal that its panel shows', () => {
    const { body } = render(NumberField, { props: { ...field, name: 'distance', unlabelled: true } });
    expect(tag(body, 'input')).toContain('aria-label="distance"');
    expect(body).not.toMatch(/aria-invalid|aria-describedby|alert/);
  });
});

describe('Dialog', () => {
  it.each(['note', 'list', 'pages'] as const)('is named by its heading and comes closed: %s', (size) => {
    const { body } = render(Dialog, { props: { open: true, titleId: 'title', size, children } });
    expect(tag(body, 'dialog')).toMatch(new RegExp(`class="${size} .*aria-labelledby="title"`));
    expect(tag(body, 'dialog')).not.toContain(' open');
  });
});

describe('Drawer', () => {
  it('is a dialog that the browser opens by its id and closes by a click beside it', () => {
    const props = { id: 'd', label: 'The sounds there are', size: 'wide', class: 'own', children } as const;
    const start = tag(render(Drawer, { props }).body, 'div');
    expect(start).toMatch(/class="drawer wide own .*popover="auto" id="d" role="dialog"/);
    expect(start).toContain('aria-label="The sounds there are"');
  });
});
