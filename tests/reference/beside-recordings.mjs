// Makes every table "beside recordings" of docs/models again, from recordings that are no part of this project:
//   apt-get download simutrans-pak64 openttd-opensfx && for f in *.deb; do dpkg-deb -x "$f" recordings; done
//   node tests/reference/beside-recordings.mjs recordings
// (versions 121.0-1 and 1.0.3-2). Columns of a table are sounds, rows are figures; the docs set them as they need. What the
// figures are is said at the functions below.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { loadTypescript } from '../../src/cli/load-typescript.mjs';

const RATE = 48000;
const folder = process.argv[2];
if (!folder) throw new Error('say in which folder the packages were unpacked');

const { RealFft } = await loadTypescript('src/lib/numeric/fft.ts');
const { filter, section } = await loadTypescript('src/lib/sounds/blocks/filter.ts');
const { movingSource, stillSource } = await loadTypescript('src/lib/sounds/sources.ts');
const { renderLoop } = await loadTypescript('src/lib/sounds/motion/ride.ts');
const { renderHeldHorn } = await loadTypescript('src/lib/sounds/signals/render-held-horn.ts');
const { LINESIDE, MACHINES } = await loadTypescript('src/lib/sounds/roster.ts');

/** Samples of a WAV file of 8 or 16 bits, its channels added up. */
function wave(bytes) {
  let [at, format] = [12, null];
  for (;;) {
    const id = bytes.toString('latin1', at, at + 4);
    const size = bytes.readUInt32LE(at + 4);
    at += 8;
    if (id === 'fmt ')
      format = { channels: bytes.readUInt16LE(at + 2), rate: bytes.readUInt32LE(at + 4), bits: bytes.readUInt16LE(at + 14) };
    if (id === 'data') {
      const { channels, rate, bits } = format;
      const width = bits / 8;
      const frames = Math.floor(Math.min(size, bytes.length - at) / (width * channels));
      const sample = (i) => (bits === 8 ? (bytes[at + i] - 128) / 128 : bytes.readInt16LE(at + 2 * i) / 32768);
      const samples = Float32Array.from({ length: frames }, (_, i) => {
        let sum = 0;
        for (let c = 0; c < channels; c++) sum += sample(i * channels + c);
        return sum;
      });
      return { samples, rate };
    }
    at += size + (size & 1);
  }
}

const simutrans = (name) => wave(readFileSync(path.join(folder, 'usr/share/games/simutrans/pak/sound', name)));
const cat = readFileSync(path.join(folder, 'usr/share/games/openttd/baseset/opensfx/opensfx.cat'));
/** A sound of the catalogue by its number: a table of places and lengths, then a name and a WAV file each. */
function openttd(number) {
  const place = cat.readUInt32LE(8 * number) & 0x7fffffff;
  return wave(cat.subarray(place + 1 + cat[place]));
}

const machine = (name, notch) => {
  const sound = { ...MACHINES.find((one) => one.name.startsWith(name)), notch };
  return { samples: renderLoop(movingSource(sound), sound, RATE), rate: RATE };
};
const still = (sound) => ({ samples: stillSource(sound).render(sound, RATE), rate: RATE });
const lineside = (name) => LINESIDE.find((one) => one.name.startsWith(name));
const blast = (name) => {
  const { samples, loopFrom } = renderHeldHorn(lineside(name), RATE);
  return { samples: samples.subarray(loopFrom), rate: RATE };
};

const rms = (x) => Math.sqrt(x.reduce((sum, v) => sum + v * v, 0) / x.length);
/** Peak over RMS, in dB. */
const crest = ({ samples }) => (20 * Math.log10(samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0) / rms(samples))).toFixed(1);

/** Welch's spectrum: Hann windows of about three quarters of a second, half over each other. */
function spectrum({ samples, rate }) {
  const size = 2 ** Math.round(Math.log2(0.74 * rate));
  const fft = new RealFft(size);
  const power = new Float64Array(size / 2 + 1);
  for (let from = 0; from === 0 || from + size <= samples.length; from += size / 2) {
    const windowed = Float64Array.from({ length: size }, (_, i) => (samples[from + i] ?? 0) * Math.sin((Math.PI * i) / size) ** 2);
    const { re, im } = fft.forward(windowed);
    for (let k = 0; k <= size / 2; k++) power[k] += re[k] ** 2 + im[k] ** 2;
  }
  return { power, bin: rate / size };
}

function within({ power, bin }, from, to) {
  let sum = 0;
  for (let k = Math.ceil(from / bin); k < Math.min(power.length, to / bin); k++) sum += power[k];
  return sum;
}

/** Levels of bands of 1/`part` octave in dB against the strongest from `low` Hz up; a dash where the recording ends. */
function bands(sound, part, centres, low) {
  const found = spectrum(sound);
  const level = (centre) => 10 * Math.log10(within(found, centre * 2 ** (-0.5 / part), centre * 2 ** (0.5 / part)));
  const all = [];
  for (let n = 0, f = low; f < 0.4 * sound.rate; n++, f = low * 2 ** (n / part)) all.push(level(f));
  const strongest = Math.max(...all);
  return centres.map((centre) => (centre * 2 ** (0.5 / part) > 0.5 * sound.rate ? '–' : Math.round(level(centre) - strongest)));
}

/** Share of the power between two frequencies. */
const share = (sound, from, to) => {
  const found = spectrum(sound);
  return (within(found, from, to) / within(found, 20, sound.rate / 2)).toFixed(2);
};

/** RMS swing of the envelope in ranges of its frequency, against its mean; of a range of the sound, or of the whole. */
function swings({ samples, rate }, ranges, range) {
  const span = { sampleRate: rate, cyclic: false };
  const heard = range
    ? filter(filter(samples, section('highPass', range[0], 0.7, rate), span), section('lowPass', range[1], 0.7, rate), span)
    : samples;
  const count = Math.floor((samples.length / rate) * 200);
  const envelope = Float64Array.from({ length: count }, (_, k) => {
    const piece = heard.subarray(Math.floor((k * rate) / 200), Math.floor(((k + 1) * rate) / 200));
    return piece.reduce((sum, x) => sum + Math.abs(x), 0) / piece.length;
  });
  const mean = envelope.reduce((sum, x) => sum + x, 0) / count;
  return ranges.map(([low, high]) => {
    let power = 0;
    for (let k = Math.ceil((low * count) / 200); k < (high * count) / 200; k++) {
      let [re, im] = [0, 0];
      envelope.forEach((x, i) => {
        re += x * Math.cos((2 * Math.PI * k * i) / count);
        im += x * Math.sin((2 * Math.PI * k * i) / count);
      });
      power += (2 * (re * re + im * im)) / count ** 2;
    }
    return (Math.sqrt(power) / mean).toFixed(2);
  });
}

/** How high lines stand: the highest bin of a third octave over its median, in dB, on the average. */
function lines(sound, from, to) {
  const { power, bin } = spectrum(sound);
  const heights = [];
  for (let f = from; f < to * 0.99; f *= 2 ** (1 / 3)) {
    const bins = [...power.subarray(Math.ceil(f / bin), Math.ceil((f * 2 ** (1 / 3)) / bin))].sort((a, b) => a - b);
    heights.push(10 * Math.log10(bins.at(-1) / bins[bins.length >> 1]));
  }
  return Math.round(heights.reduce((a, b) => a + b) / heights.length);
}

function print(title, names, sounds, figures) {
  console.log(`\n## ${title}\n\n|  | ${names.join(' | ')} |\n|${' --- |'.repeat(names.length + 1)}`);
  const columns = sounds.map(figures);
  columns[0].forEach(([name], row) => console.log(`| ${name} | ${columns.map((column) => column[row][1]).join(' | ')} |`));
}

const THIRDS = [63, 125, 250, 500, 1000, 2000, 4000, 8000];
const engines = ['No. 41', 'No. 75', 'No. 7,', 'Railbus'];
print(
  'The diesel: five road vehicles; four engines at idle, notch 4, notch 8',
  ['bus', 'truck', 'old bus starts', 'modern bus', 'old bus', ...engines.flatMap((name) => [0, 4, 8].map((notch) => `${name} ${notch}`))],
  [simutrans('bus.wav'), simutrans('truck.wav'), openttd(25), openttd(27), openttd(28), ...engines.flatMap((name) => [0, 4, 8].map((notch) => machine(name, notch)))],
  (sound) => {
    const [slow, middle, fast] = swings(sound, [[5, 10], [10, 20], [20, 60]], [300, 3000]);
    return [
      ...bands(sound, 3, THIRDS, 25).map((level, i) => [`${THIRDS[i]} Hz`, level]),
      ['crest factor, dB', crest(sound)],
      ['swing, 5 to 10 Hz', slow],
      ['swing, 10 to 20 Hz', middle],
      ['swing, 20 to 60 Hz', fast],
      ['height of lines, 80 to 400 Hz', lines(sound, 80, 400)],
      ['height of lines, 0.5 to 3.2 kHz', lines(sound, 500, 3200)]
    ];
  }
);

const OCTAVES = [63, 125, 250, 500, 1000, 2000, 4000, 8000];
const octaves = (sound) => {
  const slow = [[0.5, 2], [2, 4], [4, 8], [8, 16]];
  const found = swings(sound, slow);
  return [
    ...bands(sound, 1, OCTAVES, 31.5).map((level, i) => [`${OCTAVES[i]} Hz`, level]),
    ['peak/RMS', crest(sound)],
    ...slow.map(([low, high], i) => [`${low} to ${high} Hz`, found[i]])
  ];
};
print(
  'The electric',
  ['underground train', 'train running by', 'No. 90, notch 4', 'No. 2, notch 4'],
  [openttd(65), openttd(71), machine('No. 90', 4), machine('No. 2,', 4)],
  octaves
);
print(
  'Steam and its whistle',
  ['whistle (openttd)', 'whistle (simutrans)', 'factory whistle', "No. 8's whistle", "No. 12's whistle", 'jet of steam', 'No. 8 at rest', 'No. 8, notch 4'],
  [openttd(4), simutrans('steam.wav'), openttd(3), still(lineside('Whistle of No. 8')), still(lineside('Whistle of No. 12')), openttd(13), machine('No. 8', 0), machine('No. 8', 4)],
  octaves
);

const HIGH = [1250, 2500, 5000, 10000];
const [twoGongs, oneGong] = LINESIDE.filter(({ kind }) => kind === 'crossing');
const [fewCars, manyCars] = LINESIDE.filter(({ kind }) => kind === 'slack');
print(
  'Signals',
  ["diesel's horn", "ship's horn", 'five notes', 'three notes', 'crossing', 'another crossing', twoGongs.name, oneGong.name, 'dropped metal', fewCars.name, manyCars.name],
  [openttd(10), openttd(6), blast('No. 41'), blast('No. 7'), openttd(14), simutrans('crossing.wav'), still(twoGongs), still(oneGong), openttd(15), still(fewCars), still(manyCars)],
  (sound) => [
    ['crest, dB', crest(sound)],
    ['share 400 Hz to 1 kHz', share(sound, 400, 1000)],
    ...bands(sound, 3, HIGH, 25).map((level, i) => [`${HIGH[i]} Hz`, level])
  ]
);
