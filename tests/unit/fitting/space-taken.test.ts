import { test } from 'vitest';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { spaceTaken } from '../../../src/lib/fitting/space-taken.js';
import { close } from '../../helpers/close.js';

// The oval is 40 × 28 × 12 mm, with a body of half of that: 6.72 cm³.
const speaker = SPEAKERS.oval;
const mount = { kind: 'box', length: 0.042, width: 0.03, depth: 0.017 } as const;
const second = { at: [0, 0.03], reversed: false, wiring: 'parallel' } as const;
const because = 'by hand, in cm³';

test('a box takes all within its walls, a speaker in roof or floor its body, two of them both', () => {
  // 4.4 × 3.2 × 1.8 cm
  close(spaceTaken('roof box', { speaker, mount, turn: 0 }) * 1e6, 25.344, { abs: 1e-9, because });
  const shell = { kind: 'shell', length: 0.1, width: 0.04, height: 0.03, ends: 'closed', offset: 0 } as const;
  close(spaceTaken('roof', { speaker, mount: shell, turn: 0 }) * 1e6, 6.72, { abs: 1e-9, because });
  close(spaceTaken('floor', { speaker, mount, turn: 0 }) * 1e6, 6.72, { abs: 1e-9, because });
  close(spaceTaken('floor', { speaker, mount, turn: 0, second }) * 1e6, 13.44, { abs: 1e-9, because });
});
