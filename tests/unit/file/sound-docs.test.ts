import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { knobsOfKind, SOUND_KIND_NAMES } from '../../../src/lib/sounds/kinds.js';
import { usualSound } from '../../../src/lib/sounds/roster.js';

const page = readFileSync(path.join(import.meta.dirname, '../../../docs/file-format.md'), 'utf8');

test.each(SOUND_KIND_NAMES)(
  'docs/file-format.md lists every key of %s, its range and its default',
  (kind) => {
    const [, section] = page.split(`### \`${kind}\`\n`);
    const rows = section
      .split(/\n##/)[0]
      .split('\n')
      .filter((line) => line.startsWith('| `'))
      .map((line) => line.split('|').map((cell) => cell.trim()));
    const knobs = Object.entries(knobsOfKind(kind));
    expect(rows.map(([, key]) => key)).toEqual(knobs.map(([key]) => `\`${key}\``));
    const usual = usualSound(kind) as unknown as Record<string, unknown>;
    knobs.forEach(([key, knob], i) => {
      const [, , name, values, byDefault] = rows[i];
      expect(name).toBe(knob.name);
      expect(byDefault).toBe(`\`${JSON.stringify(usual[key])}\``);
      if (knob.type === 'number') expect(values).toContain(`${knob.min} … ${knob.max}`);
      if (knob.type === 'chord') expect(values).toContain(`${knob.lowest} … ${knob.highest}`);
      if (knob.type === 'choice') for (const option of knob.options) expect(values).toContain(`"${option}"`);
    });
  }
);
