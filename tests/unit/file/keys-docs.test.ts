import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { benchFileSchema } from '../../../src/lib/file/bench-file-schema.js';

const page = readFileSync(path.join(import.meta.dirname, '../../../docs/file-format.md'), 'utf8');

/** The first column of the tables under a heading. */
function keysUnder(heading: string): string[] {
  const [, section] = page.split(`## ${heading}\n`);
  return [...section.split(/\n##? /)[0].matchAll(/^\| `(\w+)`/gm)].map(([, key]) => key);
}

/** A mount's schema: its kind and the keys of its sizes. */
interface Option {
  entries: { kind: { literal: string } };
}

const top = benchFileSchema.pipe[2].entries;
const speaker = top.speakers.pipe[2].value.pipe[2].entries;
const setup = top.setups.item.pipe[2].entries;

test('docs/file-format.md lists every key, in the order in which it is written', () => {
  expect(keysUnder('Top level')).toEqual(Object.keys(top));
  expect(keysUnder('A speaker')).toEqual(Object.keys(speaker));
  expect(keysUnder('The listener')).toEqual(Object.keys(top.listener.wrapped.pipe[2].entries));
  expect(keysUnder('Blind trials')).toEqual(Object.keys(top.trials.wrapped.pipe[0].item.pipe[2].entries));
  const scene = top.script.wrapped.pipe[0].item.pipe[2].entries;
  expect(keysUnder('The script')).toEqual(Object.keys(scene));
  const heard = page.split('\n').find((line) => line.startsWith('| `heard`'))!;
  for (const key of Object.keys(scene.heard.wrapped.pipe[2].entries)) expect(heard).toContain(`\`${key}\``);
  expect(keysUnder('Hall votes')).toEqual(Object.keys(top.votes.wrapped.pipe[0].item.pipe[2].entries));
  // Its second table begins with the word `kind`.
  const [own] = keysUnder('A setup').join().split(',kind,');
  expect(own.split(',')).toEqual(Object.keys(setup));
});

test('and every kind of mount with its sizes', () => {
  const options = (setup.mount.pipe[2].options as unknown as (Option | { options: Option[] })[]).flatMap(
    (one) => ('options' in one ? one.options : [one])
  );
  const kinds = [...new Set(options.map(({ entries }) => entries.kind.literal))];
  expect(keysUnder('A setup').slice(-kinds.length)).toEqual(kinds);
  for (const { entries } of options) {
    const row = page.split('\n').find((line) => line.startsWith(`| \`${entries.kind.literal}\``))!;
    for (const key of Object.keys(entries).filter((one) => one !== 'kind'))
      expect(row).toMatch(new RegExp(`\`"?${key}["\`]`));
  }
});

test('and the keys of a model', () => {
  const { entries } = top.model.wrapped.pipe[2];
  expect(keysUnder('The model')).toEqual(Object.keys(entries));
  const [, obstacle] = page.split('An **obstacle**: ');
  const named = [...obstacle.split('\n\n')[0].matchAll(/`(\w+)`/g)].map(([, key]) => key);
  const { item } = entries.obstacles.wrapped.pipe[0];
  expect(named.sort()).toEqual(Object.keys(item.pipe[2].entries).sort());
});

test('and the keys of motor and view', () => {
  const [, motor] = page.split('**motor**: ');
  const named = [...motor.split('\n\n')[0].matchAll(/`(\w+)`/g)].map(([, key]) => key);
  expect(named).toEqual(Object.keys(speaker.motor.wrapped.pipe[2].entries));
  const [, view] = page.split('## The view\n');
  for (const key of Object.keys(top.view.wrapped.pipe[2].entries))
    expect(view.split('\n##')[0]).toContain(`\`${key}\``);
});
