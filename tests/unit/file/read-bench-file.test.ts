import { usualSound } from '../../../src/lib/sounds/roster.js';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { BenchFileError } from '../../../src/lib/file/bench-file-error.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { demoBenchText, type Loose } from '../../helpers/demo-bench-text.js';

/** The sentence with which a text is refused; always one line, always of the one class. */
function sentence(text: string): string {
  try {
    readBenchFile(text);
  } catch (error) {
    expect(error).toBeInstanceOf(BenchFileError);
    const { message } = error as BenchFileError;
    expect(message).toMatch(/^[^\n\r\u2028]{10,300}$/);
    return message;
  }
  return expect.unreachable('the file was read');
}

const changed = (change: (bench: Loose) => void) => sentence(demoBenchText(change));

const leastBench = (mount: object, speaker: object = {}) =>
  JSON.stringify({
    format: 'backwave-bench',
    version: 2,
    speakers: { any: { frame: { shape: 'rectangle', length: 0.04, width: 0.03 }, ...speaker } },
    setups: [{ mount }]
  });

describe('what is absent', () => {
  test('is filled in as docs/file-format.md says', () => {
    const bench = readBenchFile(leastBench({ kind: 'plate', length: 0.2, width: 0.1 }));
    expect(bench).toEqual({
      format: 'backwave-bench',
      version: 8,
      air: { temperatureC: 20 },
      speakers: {
        any: {
          name: 'any',
          frame: { shape: 'rectangle', length: 0.04, width: 0.03 },
          depth: 0.4 * 0.03,
          cone: { shape: 'ellipse', length: 0.85 * 0.04, width: 0.8 * 0.03 },
          bodyVolume: 0.5 * 0.04 * 0.03 * (0.4 * 0.03)
        }
      },
      setups: [
        {
          name: 'Flat plate',
          speaker: 'any',
          mount: { kind: 'plate', shape: 'rectangle', length: 0.2, width: 0.1, offset: [0, 0] },
          turn: 0,
          notes: ''
        }
      ],
      listener: { angleDeg: 0, plane: 'width' },
      sound: usualSound('diesel'),
      view: { heard: 0, measuredAgainst: 0, model: 'wave', inches: false, sameLoudness: false }
    });
  });

  test.each([
    [{ kind: 'free' }, { kind: 'free' }, 'Free air'],
    [
      { kind: 'plate', shape: 'round', diameter: 0.1 },
      { kind: 'plate', shape: 'round', diameter: 0.1, offset: [0, 0] },
      'Round plate'
    ],
    [
      { kind: 'shell', length: 0.1, width: 0.03, height: 0.04 },
      { kind: 'shell', length: 0.1, width: 0.03, height: 0.04, ends: 'closed', offset: 0 },
      'Shell'
    ],
    [
      { kind: 'box', length: 0.1, width: 0.03, depth: 0.04 },
      { kind: 'box', length: 0.1, width: 0.03, depth: 0.04 },
      'Closed box'
    ]
  ])('in the mount %j', (given, filled, name) => {
    expect(readBenchFile(leastBench(given)).setups[0]).toMatchObject({ name, mount: filled });
  });

  test('is a round cone in a round frame, and never a cone or depth below the least', () => {
    const round = { frame: { shape: 'round', diameter: 0.02 } };
    expect(readBenchFile(leastBench({ kind: 'free' }, round)).speakers.any.cone).toEqual({
      shape: 'round',
      diameter: 0.017
    });
    const least = { frame: { shape: 'round', diameter: 0.001 } };
    const { cone, depth } = readBenchFile(leastBench({ kind: 'free' }, least)).speakers.any;
    expect(cone).toEqual({ shape: 'round', diameter: 0.001 });
    expect(depth).toBeGreaterThanOrEqual(0.0004);
  });

  test('follows the frame: body from the given depth', () => {
    const { bodyVolume } = readBenchFile(leastBench({ kind: 'free' }, { depth: 0.01 })).speakers.any;
    expect(bodyVolume).toBe(0.5 * 0.04 * 0.03 * 0.01);
  });
});

describe('what is there', () => {
  test('is kept as it is', () => {
    const bench = readBenchFile(
      demoBenchText((loose) => {
        Object.assign(loose.setups[0], { turn: 90, notes: 'two\nlines "quoted"', name: 'Überall 1' });
        loose.setups[1].mount.offset = [0.02, -0.01];
        loose.listener = { angleDeg: -30, plane: 'length', distance: 0.5 };
        loose.sound = { kind: 'recording', name: 'idle.wav', from: 2, until: 12.5 };
        loose.view = { heard: 4, measuredAgainst: 1, model: 'wave', inches: true };
        loose.air = { temperatureC: -5 };
      })
    );
    expect(bench.setups[0]).toMatchObject({ turn: 90, notes: 'two\nlines "quoted"', name: 'Überall 1' });
    expect(bench.setups[1].mount).toMatchObject({ offset: [0.02, -0.01] });
    expect(bench.listener).toEqual({ angleDeg: -30, plane: 'length', distance: 0.5 });
    expect(bench.sound).toEqual({ kind: 'recording', name: 'idle.wav', from: 2, until: 12.5 });
    expect(bench.view).toEqual({
      heard: 4,
      measuredAgainst: 1,
      model: 'wave',
      inches: true,
      sameLoudness: false
    });
    expect(bench.speakers.oval.motor).toMatchObject({ mms: 0.00055, ratedPower: 2 });
  });

  test('may be a speaker that no setup uses', () => {
    const text = demoBenchText((loose) => (loose.speakers.spare = { ...loose.speakers.oval }));
    expect(Object.keys(readBenchFile(text).speakers)).toEqual(['oval', 'spare']);
  });

  test('may begin with a byte order mark', () => {
    expect(readBenchFile(`\ufeff${demoBenchText()}`)).toEqual(readBenchFile(demoBenchText()));
  });
});

describe('an unknown key is refused by its name and place', () => {
  test.each<[(bench: Loose) => void, string]>([
    [(b) => (b.author = 'me'), 'the bench file has an unknown key "author"'],
    [(b) => (b.air.pressure = 1), 'air has an unknown key "pressure"'],
    [(b) => (b.speakers.oval.colour = 'red'), 'speakers.oval has an unknown key "colour"'],
    [(b) => (b.setups[2].mounting = {}), 'setups[2] has an unknown key "mounting"'],
    [(b) => (b.setups[0].mount.length = 1), 'setups[0].mount has an unknown key "length"'],
    [
      (b) => (b.setups[3].mount = { kind: 'shell', lenght: 1 }),
      'setups[3].mount has an unknown key "lenght"'
    ],
    [(b) => (b.view = { projector: true }), 'view has an unknown key "projector"'],
    [(b) => (b.sound = { kind: 'pinkNoise', notch: 1 }), 'sound has an unknown key "notch"'],
    [(b) => (b['a\nb'] = 1), 'the bench file has an unknown key "a\\nb"'],
    [(b) => (b['k'.repeat(5000)] = 1), `the bench file has an unknown key "${'k'.repeat(40)}…"`]
  ])('%#', (change, expected) => {
    expect(changed(change)).toBe(expected);
  });

  test.each(['__proto__', 'constructor', 'prototype'])('%s among them, anywhere', (key) => {
    expect(sentence(`{"${key}":{"heard":1}}`)).toBe(`the bench file has an unknown key "${key}"`);
    expect(sentence(`{"speakers":{"a":{},"${key}":{}}}`)).toBe(`speakers has an unknown key "${key}"`);
    const escaped = [...key].map((c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`).join('');
    expect(sentence(`{"setups":[{},{"mount":{"${escaped}":1}}]}`)).toBe(
      `setups[1].mount has an unknown key "${key}"`
    );
    expect({}).not.toHaveProperty('heard');
  });
});

describe('what does not fit is named', () => {
  test.each<[(bench: Loose) => void, string]>([
    [(b) => delete b.setups[1].mount.length, 'setups[1].mount lacks "length"'],
    [(b) => delete b.speakers.oval.frame, 'speakers.oval lacks "frame"'],
    [(b) => Reflect.deleteProperty(b.setups[0], 'mount'), 'setups[0] lacks "mount"'],
    [(b) => Reflect.deleteProperty(b, 'setups'), 'the bench file lacks "setups"'],
    [(b) => (b.air.temperatureC = '20'), 'air.temperatureC must be a number, got "20"'],
    [(b) => (b.air.temperatureC = null), 'air.temperatureC must be a number, got null'],
    [(b) => (b.air.temperatureC = 900), 'air.temperatureC must be within -40 … 60 °C, got 900'],
    [(b) => (b.listener.angleDeg = 181), 'listener.angleDeg must be within -180 … 180 degrees, got 181'],
    [(b) => (b.listener.distance = 0), 'listener.distance must be within 0.01 … 1000 m, got 0'],
    [(b) => (b.listener.plane = 'depth'), 'listener.plane must be "length" or "width", got "depth"'],
    [(b) => (b.setups[0].turn = 45), 'setups[0].turn must be 0 or 90, got 45'],
    [
      (b) => (b.setups[0].mount.kind = 'horn'),
      'setups[0].mount.kind must be "free" or "plate" or "shell" or "box", got "horn"'
    ],
    [
      (b) => (b.setups[0].mount = {}),
      'setups[0].mount.kind is missing: it must be "free" or "plate" or "shell" or "box"'
    ],
    [
      (b) => (b.setups[1].mount.shape = 'oval'),
      'setups[1].mount.shape must be "rectangle" or "round", got "oval"'
    ],
    [
      (b) => (b.setups[1].mount.offset = [0]),
      'setups[1].mount.offset must be a list of two numbers, got a list'
    ],
    [
      (b) => (b.setups[1].mount.offset = [0, 0, 0]),
      'setups[1].mount.offset must be a list of two numbers, got a list'
    ],
    [(b) => (b.setups[3].mount.ends = 'ajar'), 'setups[3].mount.ends must be "open" or "closed", got "ajar"'],
    [(b) => (b.setups = [] as never), 'setups must be 1 … 64, got 0'],
    [(b) => (b.setups = {} as never), 'setups must be a list, got an object'],
    [(b) => (b.setups[0] = [] as never), 'setups[0] must be an object, got a list'],
    [(b) => (b.setups[0].mount = [] as never), 'setups[0].mount must be an object, got a list'],
    [(b) => (b.air = [] as never), 'air must be an object, got a list'],
    [(b) => (b.speakers = [] as never), 'speakers must be an object, got a list'],
    [(b) => (b.speakers.oval.frame = 5), 'speakers.oval.frame must be an object, got 5'],
    [(b) => (b.speakers['a b'] = { frame: [] }), 'speakers["a b"].frame must be an object, got a list'],
    [(b) => (b.setups[0].speaker = 'ovel'), 'setups[0].speaker "ovel" is not among the speakers'],
    [(b) => (b.setups[0].speaker = 'toString'), 'setups[0].speaker "toString" is not among the speakers'],
    [(b) => (b.setups[0].name = ' '), 'setups[0].name must not be empty, got " "'],
    [
      (b) => (b.setups[0].name = 'a\u001b[31m'),
      'setups[0].name must be one line without control characters, got "a\\u001b[31m"'
    ],
    [
      (b) => (b.setups[0].name = 'n'.repeat(81)),
      `setups[0].name must be at most 80 characters long, got "${'n'.repeat(40)}…"`
    ],
    [(b) => (b.view = { model: 'third' }), 'view.model must be "rule" or "wave", got "third"'],
    [(b) => (b.view = { heard: 5 }), 'view.heard must be a place in setups, 0 … 4, got 5'],
    [(b) => (b.view = { heard: 0.5 }), 'view.heard must be a whole number from 0, got 0.5'],
    [(b) => (b.view = { measuredAgainst: -1 }), 'view.measuredAgainst must be a whole number from 0, got -1'],
    [
      (b) => (b.sound = { kind: 'engine', notch: 9 }),
      'sound.notch must be a whole number from 0 to 8, got 9'
    ],
    [
      (b) => (b.sound = { kind: 'recording', name: 'a', from: 5, until: 5 }),
      'sound.until must be later than sound.from, 5 s, got 5'
    ]
  ])('%#', (change, expected) => {
    expect(changed(change)).toBe(expected);
  });

  test('which of several speakers a setup takes must be said', () => {
    const text = demoBenchText((bench) => {
      bench.speakers.second = bench.speakers.oval;
      delete bench.setups[2].speaker;
    });
    expect(sentence(text)).toBe('setups[2] does not say which speaker it takes (2 are there)');
  });

  test('a key that stands twice, which parsing would hide', () => {
    expect(sentence('{"speakers":{"oval":{},"b":{},"oval":{}}}')).toBe('speakers has the key "oval" twice');
    expect(sentence('{"setups":[{},{"mount":{"kind":"free","\\u006bind":"box"}}]}')).toBe(
      'setups[1].mount has the key "kind" twice'
    );
    expect(sentence('{"version":1,"version":1}')).toBe('the bench file has the key "version" twice');
  });

  test('a number beyond all bounds', () => {
    const text = demoBenchText().replace('"length":0.1524', '"length":1e999');
    expect(sentence(text)).toBe('setups[1].mount.length must be a finite number, got Infinity');
  });
});

describe('what is no bench file of this version', () => {
  test.each([
    ['', 'the bench file is empty'],
    [' \n', 'the bench file is empty'],
    ['[]', 'the bench file must be an object, got a list'],
    ['null', 'the bench file must be an object, got null'],
    ['"text"', 'the bench file must be an object, got "text"'],
    ['{}', 'this is no bench file: it lacks "format": "backwave-bench"'],
    ['{"format":"other"}', 'this is no bench file: its format is "other", not "backwave-bench"'],
    [
      '{"format":"backwave-bench"}',
      'this bench file does not say its version; this program reads versions 1 … 8'
    ],
    [
      '{"format":"backwave-bench","version":9,"new":1}',
      'this bench file is of version 9; this program reads versions 1 … 8'
    ],
    [
      '{"format":"backwave-bench","version":"1"}',
      'this bench file is of version "1"; this program reads versions 1 … 8'
    ],
    [
      '{"format":"backwave-bench","version":{}}',
      'this bench file is of version an object; this program reads versions 1 … 8'
    ]
  ])('%s', (text, expected) => {
    expect(sentence(text)).toBe(expected);
  });

  test.each(['{', '{"a":}', 'hello', '{"a":1}}', '{"a" 1}', '"open', '{"\\x":1}', "{'a':1}", '\0'])(
    'what is no JSON: %j',
    (text) => {
      expect(sentence(text)).toMatch(/^the bench file is not JSON/);
    }
  );

  test('the place in the text is told', () => {
    expect(sentence('{\n  "format": "backwave-bench",\n  "version": 1,,\n}')).toBe(
      'the bench file is not JSON: line 3, column 16 cannot be read'
    );
  });
});

describe('hostile files are refused soon and without harm', () => {
  test.each(['[', '{"a":', '[{"a":'])('nesting of 300 000 levels of %s', (opening) => {
    expect(sentence(opening.repeat(Math.floor(900_000 / opening.length)))).toBe(
      'the bench file is nested more than 16 levels deep; no bench is'
    );
  });

  test('more than a million characters', () => {
    expect(sentence(`"${'x'.repeat(1_000_000)}"`)).toBe(
      'the bench file is 1.0 million characters long; at most 1 million are read'
    );
  });

  test('hundreds of setups or speakers', () => {
    expect(changed((b) => (b.setups = Array(65).fill(b.setups[0])))).toBe('setups must be 1 … 64, got 65');
    const many = (b: Loose) => {
      for (let i = 0; i < 64; i++) b.speakers[`s${i}`] = b.speakers.oval;
    };
    expect(changed(many)).toBe('speakers must be at most 64, got 65');
    expect(readBenchFile(demoBenchText((b) => (b.setups = Array(64).fill(b.setups[0])))).setups).toHaveLength(
      64
    );
  });

  test.each([
    ['quotes and backslashes', '{"a":"' + '\\"'.repeat(450_000)],
    ['keys', `{${Array.from({ length: 90_000 }, (_, i) => `"k${i}":0`).join()}}`],
    [
      'wrong setups',
      `{"format":"backwave-bench","version":1,"speakers":{},"setups":[${'1,'.repeat(400_000)}1]}`
    ],
    [
      'unknown keys',
      `{"format":"backwave-bench","version":1,${Array.from({ length: 70_000 }, (_, i) => `"k${i}":0`).join()}}`
    ],
    ['digits', `{"format":"backwave-bench","version":${'9'.repeat(900_000)}}`],
    ['a name that is one long blank', demoBenchText((b) => (b.setups[0].name = ' '.repeat(900_000)))]
  ])('nearly a million characters of %s: what took longer than in proportion would not end', (_, text) => {
    sentence(text);
  });
});

test('the example of docs/file-format.md can be read', () => {
  const page = readFileSync(path.join(import.meta.dirname, '../../../docs/file-format.md'), 'utf8');
  const examples = [...page.matchAll(/```json\n(.*?)```/gs)].map(([, text]) => text);
  const benches = examples.filter((text) => text.includes('"format"'));
  expect(benches).toHaveLength(1);
  expect(readBenchFile(benches[0]).setups.map(({ name }) => name)).toEqual(['Free air', 'Flat plate']);
});

describe('a layout', () => {
  const layout = (listener: object, setup: object = {}) =>
    readBenchFile(
      JSON.stringify({
        ...(JSON.parse(leastBench({ kind: 'free' })) as object),
        version: 4,
        setups: [{ mount: { kind: 'free' }, ...setup }],
        listener
      })
    );

  test('is said with the listener and with each setup; what is not said stays so', () => {
    const told = layout({ board: true, angleDeg: 60 }, { above: 0.02, facing: 'down' });
    expect(told.listener).toEqual({ board: true, angleDeg: 60, plane: 'width' });
    expect(told.setups[0]).toMatchObject({ above: 0.02, facing: 'down' });
    const untold = layout({});
    expect(untold.listener).toEqual({ angleDeg: 0, plane: 'width' });
    expect(Object.keys(untold.setups[0])).toEqual(['name', 'speaker', 'mount', 'turn', 'notes']);
  });

  test.each<[string, object, object, string]>([
    ['a board of another kind', { board: 'hard' }, {}, 'listener.board must be true or false, got "hard"'],
    ['a height that is no number', {}, { above: '2' }, 'setups[0].above must be a number, got "2"'],
    ['a third way to face', {}, { facing: 'left' }, 'setups[0].facing must be "up" or "down", got "left"']
  ])('is refused: %s', (_, listener, setup, expected) => {
    expect(() => layout(listener, setup)).toThrow(expected);
  });
});

describe('a second speaker, drive and amplifier', () => {
  const read = (setup: object, top: object = {}) =>
    readBenchFile(
      JSON.stringify({
        ...(JSON.parse(leastBench({ kind: 'free' })) as object),
        version: 8,
        setups: [{ mount: { kind: 'plate', length: 0.2, width: 0.1 }, ...setup }],
        ...top
      })
    );

  test('are read with their defaults; what is not said stays so', () => {
    expect(read({ second: { at: [0.04, 0] } }).setups[0].second).toEqual({
      at: [0.04, 0],
      reversed: false,
      wiring: 'parallel'
    });
    const told = read({}, { drive: { watts: 1, into: 8 }, amplifier: { leastLoad: 4, power: 2 } });
    expect(told).toMatchObject({ drive: { watts: 1, into: 8 }, amplifier: { leastLoad: 4, power: 2 } });
    expect(told.setups[0]).not.toHaveProperty('second');
    expect(read({})).not.toHaveProperty('drive');
    expect(read({})).not.toHaveProperty('amplifier');
  });

  test.each<[string, object, object, string]>([
    ['no place', { second: {} }, {}, 'setups[0].second lacks "at"'],
    [
      'a wiring that is none',
      { second: { at: [0, 0], wiring: 'star' } },
      {},
      'setups[0].second.wiring must be "parallel" or "series", got "star"'
    ],
    [
      'two drives',
      {},
      { drive: { volts: 1, watts: 1, into: 8 } },
      'drive must have volts, or watts and the load they go into'
    ],
    [
      'half a drive',
      {},
      { drive: { watts: 1 } },
      'drive must have volts, or watts and the load they go into'
    ],
    ['no volts', {}, { drive: { volts: 0 } }, 'drive.volts must be within 0.001 … 100 V, got 0'],
    [
      'an amplifier for nothing',
      {},
      { amplifier: { leastLoad: 0, power: 2 } },
      'amplifier.leastLoad must be within 0.1 … 1000 Ω, got 0'
    ],
    ['half an amplifier', {}, { amplifier: { power: 2 } }, 'amplifier lacks "leastLoad"']
  ])('%s is refused', (_, setup, top, sentence) => {
    expect(() => read(setup, top)).toThrow(sentence);
  });
});

describe('openings', () => {
  const withMount = (mount: object) =>
    JSON.stringify({ ...(JSON.parse(leastBench(mount)) as object), version: 4 });

  test('are read with their defaults, of any kind of mount', () => {
    const leak = { gap: 0.0001, length: 0.12 };
    const { mount } = readBenchFile(
      withMount({ kind: 'free', leak, chassis: { height: 0.008, slit: 0.001 } })
    ).setups[0];
    expect(mount).toEqual({
      kind: 'free',
      leak: { ...leak, depth: 0.001 },
      chassis: { height: 0.008, slit: 0.001, ends: 0, depth: 0.001, fill: 0 }
    });
    const more = readBenchFile(
      withMount({
        kind: 'box',
        length: 0.042,
        width: 0.029,
        depth: 0.017,
        leak: { hole: 0.002 },
        grille: { holes: 6, diameter: 0.0015, cavity: 0.002 },
        body: { length: 0.1, width: 0.035, height: 0.03, openings: 0.0003 }
      })
    ).setups[0].mount;
    expect(more).toMatchObject({ leak: { hole: 0.002, depth: 0.001 }, grille: { thickness: 0.001 } });
  });

  test.each([
    [{ leak: { gap: 0.0001 } }, 'setups[0].mount.leak must have a gap and a length, or a hole'],
    [{ leak: { hole: 0.002, length: 0.1 } }, 'setups[0].mount.leak must have a gap and a length, or a hole'],
    [{ leak: { gap: 0.0001, length: 0.1, width: 1 } }, 'setups[0].mount.leak has an unknown key "width"'],
    [{ chassis: { height: 0.008 } }, 'setups[0].mount.chassis lacks "slit"'],
    [{ grille: 6 }, 'setups[0].mount.grille must be an object, got 6'],
    [{ body: { length: '1' } }, 'setups[0].mount.body.length must be a number, got "1"']
  ])('%j', (openings, expected) => {
    expect(sentence(withMount({ kind: 'free', ...openings }))).toBe(expected);
  });
});
