import { describe, expect, it } from 'vitest';
import { checkInstallation, LIMITS } from '../../../../src/lib/acoustics/mounts/check-installation.js';
import type { Mount } from '../../../../src/lib/acoustics/mounts/mount.js';
import type { Outline } from '../../../../src/lib/acoustics/outline.js';
import type { Motor, Speaker } from '../../../../src/lib/acoustics/speaker/speaker.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { DEMO, ovalIn } from '../../../helpers/demo-installations.js';

const rectangle = (length: number, width: number, x = 0, y = 0): Mount => ({
  kind: 'plate',
  shape: 'rectangle',
  length,
  width,
  offset: [x, y]
});
const round = (diameter: number, x = 0, y = 0): Mount => ({
  kind: 'plate',
  shape: 'round',
  diameter,
  offset: [x, y]
});
const shell = (
  length: number,
  width: number,
  height: number,
  ends: 'open' | 'closed' = 'closed',
  offset = 0
): Mount => ({ kind: 'shell', length, width, height, ends, offset });
const box = (length: number, width: number, depth: number): Mount => ({ kind: 'box', length, width, depth });

/** What is said of the oval in this mount; '' if nothing. */
function said(mount: Mount, turn: 0 | 90 = 0): string {
  return saidOf(SPEAKERS.oval, mount, turn);
}

function saidOf(speaker: Speaker, mount: Mount = { kind: 'free' }, turn: 0 | 90 = 0): string {
  try {
    checkInstallation({ speaker, mount, turn });
    return '';
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError);
    return (error as RangeError).message;
  }
}

describe('checkInstallation accepts', () => {
  it('the mounts of the demo and all reference speakers', () => {
    for (const installation of Object.values(DEMO)) checkInstallation(installation);
    for (const speaker of Object.values(SPEAKERS)) expect(saidOf(speaker, rectangle(0.2, 0.1))).toBe('');
  });

  it('a cone as large as its plate, as long as it sits in the middle', () => {
    expect(said(rectangle(0.034, 0.0225))).toBe('');
    expect(said(rectangle(0.0225, 0.034), 90)).toBe('');
    expect(said(round(0.034))).toBe('');
    expect(said(round(0.034, 0, 1e-5))).not.toBe('');
  });

  it('a frame that overhangs a plate or the open end of a shell', () => {
    expect(said(rectangle(0.036, 0.024))).toBe('');
    expect(said(shell(0.152, 0.033, 0.04, 'open', 0.058))).toBe('');
  });

  it('a round speaker of 1 mm on the largest plate', () => {
    const dot: Outline = { shape: 'round', diameter: 0.001 };
    expect(saidOf({ ...SPEAKERS.oval, frame: dot, cone: dot }, round(3))).toBe('');
  });

  it('a box exactly as deep as the speaker', () => {
    expect(said(box(0.06, 0.04, 0.012))).toBe('');
  });
});

describe('checkInstallation refuses, in one sentence,', () => {
  it('sizes that are zero, negative, absurd or no number', () => {
    for (const value of [0, -0.1, 3.001, 1e9, NaN, Infinity, 0.0009]) {
      expect(said(rectangle(value, 0.1))).toBe(
        `plate length must be within 1 … 3000 mm, got ${Number((value * 1000).toPrecision(4))}`
      );
      expect(said(rectangle(0.1, value))).toMatch(/^plate width must be within 1 … 3000 mm, got /);
      expect(said(round(value))).toMatch(/^plate diameter must be within 1 … 3000 mm, got /);
      expect(said(shell(value, 0.033, 0.04))).toMatch(/^shell length must be within 1 … 3000 mm, got /);
      expect(said(shell(0.152, value, 0.04))).toMatch(/^shell width /);
      expect(said(shell(0.152, 0.033, value))).toMatch(/^shell height /);
      expect(said(box(value, 0.029, 0.017))).toMatch(/^box length /);
      expect(said(box(0.042, value, 0.017))).toMatch(/^box width /);
      expect(said(box(0.042, 0.029, value))).toMatch(/^box depth /);
      const frame: Outline = { shape: 'rectangle', length: value, width: 0.03 };
      expect(saidOf({ ...SPEAKERS.oval, frame })).toMatch(/^frame length must be within 1 … 500 mm, got /);
      const cone: Outline = { shape: 'round', diameter: value };
      expect(saidOf({ ...SPEAKERS.oval, cone })).toMatch(/^cone diameter must be within 1 … 500 mm, got /);
    }
  });

  it('offsets that are no number', () => {
    expect(said(rectangle(0.1, 0.1, NaN, 0))).toBe(
      'plate offset along the length must be within -3000 … 3000 mm, got NaN'
    );
    expect(said(round(0.1, 0, Infinity))).toMatch(/^plate offset across the width /);
    expect(said(shell(0.152, 0.033, 0.04, 'open', NaN))).toMatch(/^shell offset /);
  });

  it('motor values that are zero, negative, absurd or no number', () => {
    const keys: (keyof Motor)[] = ['mms', 'cms', 'bl', 're', 'qms', 'xmax', 'ratedPower'];
    for (const key of keys)
      for (const value of [0, -1, NaN, Infinity, 1e6]) {
        const motor = { ...SPEAKERS.oval.motor, [key]: value };
        expect(saidOf({ ...SPEAKERS.oval, motor }), `${key} ${value}`).toMatch(
          / must be within .* …? ?.*, got /
        );
      }
    expect(saidOf({ ...SPEAKERS.oval, motor: { ...SPEAKERS.oval.motor, mms: 0 } })).toBe(
      'moving mass must be within 0.0001 … 1000 g, got 0'
    );
    expect(saidOf({ ...SPEAKERS.oval, depth: 0 })).toBe('speaker depth must be within 0.2 … 500 mm, got 0');
    expect(saidOf({ ...SPEAKERS.oval, bodyVolume: -1 })).toMatch(
      /^body volume must be within 0 … 100000 cm³/
    );
  });

  it('a cone larger than its frame', () => {
    const frame: Outline = { shape: 'rectangle', length: 0.02, width: 0.02 };
    expect(saidOf({ ...SPEAKERS.oval, frame })).toBe(
      'the cone (34 × 22.5 mm) is larger than its frame (20 × 20 mm)'
    );
  });

  it('a cone larger than its plate, or beyond its edge', () => {
    expect(said(rectangle(0.02, 0.02))).toBe('the cone (34 × 22.5 mm) is larger than the plate (20 × 20 mm)');
    expect(said(rectangle(0.04, 0.03), 90)).toBe(
      'the cone (22.5 × 34 mm) is larger than the plate (40 × 30 mm)'
    );
    expect(said(round(0.03))).toBe('the cone (34 × 22.5 mm) is larger than the plate (ø 30 mm)');
    expect(said(rectangle(0.1524, 0.1016, 0, -0.04))).toBe(
      'the cone (34 × 22.5 mm), 0 and -40 mm from the middle, reaches over the edge of the plate (152.4 × 101.6 mm)'
    );
  });

  it('a speaker that does not go into the roof of a shell', () => {
    expect(said(shell(0.152, 0.018, 0.04))).toBe(
      'the frame (40 × 28 mm) does not fit across the shell (18 mm wide inside)'
    );
    expect(said(shell(0.152, 0.033, 0.04), 90)).toBe(
      'the frame (28 × 40 mm) does not fit across the shell (33 mm wide inside)'
    );
    expect(said(shell(0.152, 0.033, 0.04, 'closed', -0.06))).toBe(
      'the frame (40 × 28 mm), -60 mm from the middle, reaches over the end of the roof (152 mm long inside)'
    );
    expect(said(shell(0.152, 0.033, 0.04, 'open', 0.06))).toBe(
      'the cone (34 × 22.5 mm), 60 mm from the middle, reaches over the end of the roof (152 mm long inside)'
    );
  });

  it('a box that is too small in front, too shallow, or filled by the body', () => {
    expect(said(box(0.03, 0.029, 0.03))).toBe(
      'the cone (34 × 22.5 mm) is larger than the front of the box (30 × 29 mm inside)'
    );
    expect(said(box(0.042, 0.029, 0.011))).toBe(
      'the box (11 mm deep inside) is shallower than the speaker (12 mm)'
    );
    expect(saidOf({ ...SPEAKERS.oval, bodyVolume: 25e-6 }, box(0.042, 0.029, 0.017))).toBe(
      "the speaker's body fills the box: it takes 25 cm³ and the box holds 20.71 cm³"
    );
    const filled = { ...SPEAKERS.oval, bodyVolume: 0.042 * 0.029 * 0.017 };
    expect(saidOf(filled, box(0.042, 0.029, 0.017))).toMatch(/^the speaker's body fills the box/);
  });

  it('a mount or a turn that does not exist', () => {
    expect(said({ kind: 'horn' } as unknown as Mount)).toBe(
      'a mount must be of the kind free, plate, shell or box, got horn'
    );
    expect(said({ kind: 'free' }, 45 as unknown as 90)).toBe('turn must be 0 or 90 degrees, got 45');
  });
});

it('LIMITS are in order', () => {
  for (const [least, most] of Object.values(LIMITS)) expect(least).toBeLessThan(most);
});

it('takes a loss inside a shell of 0 … 20 %, and none that is more, less or no number', () => {
  const shell = (loss: number) =>
    ovalIn({ kind: 'shell', length: 0.152, width: 0.033, height: 0.04, ends: 'closed', offset: 0, loss });
  for (const loss of [0, 0.003, 0.2]) checkInstallation(shell(loss));
  for (const loss of [-0.001, 0.21, NaN])
    expect(() => checkInstallation(shell(loss))).toThrow(
      /^loss inside the shell must be within 0 … 20 %, got /
    );
});

describe('over a board', () => {
  const over = (mount: Mount, above: number, facing: 'up' | 'down' = 'up', depth = 0.012) => {
    try {
      checkInstallation({ speaker: { ...SPEAKERS.oval, depth }, mount, turn: 0, board: { above, facing } });
      return '';
    } catch (error) {
      return (error as RangeError).message;
    }
  };

  it('accepts a mount that stands clear of it', () => {
    expect(over(rectangle(0.15, 0.1), 0.013)).toBe('');
    expect(over(shell(0.152, 0.033, 0.04), 0.001)).toBe('');
    expect(over(box(0.042, 0.029, 0.017), 0.001)).toBe('');
    // turned over, the magnet looks up
    expect(over({ kind: 'free' }, 0.001, 'down')).toBe('');
  });

  it.each<[string, string]>([
    [
      over(box(0.042, 0.029, 0.017), -0.003),
      'the board cuts through the mount: its lowest part must be within 1 … 1000 mm above the board, got -3'
    ],
    [
      over(rectangle(0.15, 0.1), 0),
      'the board cuts through the mount: its lowest part must be within 1 … 1000 mm above the board, got 0'
    ],
    [over(rectangle(0.15, 0.1), 2), 'height above the board must be within 1 … 1000 mm, got 2000'],
    [
      over(rectangle(0.15, 0.1), 0.012),
      'the magnet touches the board: it reaches 12 mm below the plate, which is 12 mm above the board'
    ],
    [
      over({ kind: 'free' }, 0.005),
      'the magnet touches the board: it reaches 12 mm below the frame, which is 5 mm above the board'
    ],
    [
      over(shell(0.152, 0.033, 0.04), 0.014, 'up', 0.06),
      'the magnet touches the board: it reaches 20 mm below the lower edge of the shell, which is 14 mm above the board'
    ],
    [over({ kind: 'free' }, 0.02, 'left' as 'up'), 'a mount over the board must face up or down, got left']
  ])('refuses: %s', (got, expected) => {
    expect(got).toBe(expected);
  });
});
