import { OfflineAudioContext, type IOfflineAudioContext } from 'standardized-audio-context';
import type { Installation } from '../../../src/lib/acoustics/installation.js';
import type { Listener } from '../../../src/lib/acoustics/listener.js';
import { firstOrderHighPass } from '../../../src/lib/acoustics/rule/first-order.js';
import { ruleOfThumb } from '../../../src/lib/acoustics/rule/rule-of-thumb.js';
import { waveAnswer } from '../../../src/lib/evaluation/answer.js';
import { filterFor } from '../../../src/lib/evaluation/stand.js';
import type { ComplexArray } from '../../../src/lib/numeric/complex-array.js';
import { hearWaves, heardResponse } from '../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../src/lib/waves/wave-solution.js';
import { ListeningRoom } from '../../../src/lib/audio/listening-room.js';
import { fftFrequencies, impulseResponse, tapsFor } from '../../../src/lib/numeric/impulse-response.js';
import { AIR, DEMO, IN_FRONT } from '../../helpers/demo-installations.js';
import { filterOf } from './demo-filters.js';
import { irregular } from './irregular.js';

const LENGTH = 131072;

/** 50 Hz to 12 kHz, 24 an octave. */
const FREQUENCIES = Float64Array.from({ length: 191 }, (_, i) => 50 * 2 ** (i / 24)).filter(
  (f) => f <= 12000
);

/** |Σ x·e^{−jωn}| in dB; the phasor is turned from sample to sample, which is right within 10⁻¹⁰. */
function levelDb(samples: Float32Array, frequency: number, sampleRate: number): number {
  const turn = (2 * Math.PI * frequency) / sampleRate;
  const [turnCos, turnSin] = [Math.cos(turn), Math.sin(turn)];
  let [re, im, cos, sin] = [0, 0, 1, 0];
  for (let n = 0; n < samples.length; n++) {
    re += samples[n] * cos;
    im -= samples[n] * sin;
    const turned = cos * turnCos - sin * turnSin;
    sin = sin * turnCos + cos * turnSin;
    cos = turned;
  }
  return 20 * Math.log10(Math.hypot(re, im));
}

/** A click, or half a second of noise that fades in and out of silence, one second after the beginning. */
function testSignal(kind: 'impulse' | 'noise', sampleRate: number): Float32Array {
  const samples = new Float32Array(LENGTH);
  if (kind === 'impulse') samples[sampleRate] = 1;
  const random = irregular(1);
  if (kind === 'noise') for (let n = 0; n < 24000; n++) samples[sampleRate + n] = random(-0.5, 0.5);
  return samples;
}

/** The sound through one branch of the real graph, at half volume, rendered off line. */
async function throughBranch(filter: Float32Array, signal: Float32Array, sampleRate: number) {
  const context: IOfflineAudioContext = new OfflineAudioContext({
    length: signal.length,
    numberOfChannels: 1,
    sampleRate
  });
  const room = new ListeningRoom(context, 4);
  room.setBranch(2, filter);
  room.hear(2);
  room.setSound(signal);
  room.setVolume(0.5);
  await room.play();
  return (await context.startRendering()).getChannelData(0);
}

export interface Compared {
  frequency: number;
  got: number;
  expected: number;
}

/** Levels in dB of a branch's rendering and of the computed response. */
export async function branchAndResponse(
  mount: string,
  kind: 'impulse' | 'noise',
  sampleRate: number
): Promise<Compared[]> {
  const signal = testSignal(kind, sampleRate);
  const rendering = await throughBranch(filterOf(DEMO[mount], sampleRate), signal, sampleRate);
  const h = ruleOfThumb(DEMO[mount], AIR, IN_FRONT, FREQUENCIES, 'full');
  return compared(rendering, signal, sampleRate, h);
}

/** The same of the wave solution in full, the speaker off the middle where the mount has room for that. */
export async function branchAndWaves(mount: string, listener: Listener): Promise<Compared[]> {
  const sampleRate = 48000;
  const signal = testSignal('impulse', sampleRate);
  const aside = asideIn(DEMO[mount]);
  const heard = hearWaves(solveMount(aside, AIR), listener);
  const filter = filterFor(waveAnswer(heard, 'full', aside, AIR), sampleRate);
  const rendering = await throughBranch(filter, signal, sampleRate);
  return compared(rendering, signal, sampleRate, heardResponse(heard, aside, AIR, FREQUENCIES));
}

function asideIn(installation: Installation): Installation {
  const { mount } = installation;
  return mount.kind === 'shell' ? { ...installation, mount: { ...mount, offset: 0.03 } } : installation;
}

function compared(
  rendering: Float32Array,
  signal: Float32Array,
  sampleRate: number,
  h: ComplexArray
): Compared[] {
  return Array.from(FREQUENCIES, (frequency, i) => ({
    frequency,
    got:
      levelDb(rendering, frequency, sampleRate) - levelDb(signal, frequency, sampleRate) + 20 * Math.log10(2),
    expected: 20 * Math.log10(Math.hypot(h.re[i], h.im[i]))
  }));
}

/** Levels in dB of a first-order high-pass: a branch of the graph against the browser's own recursive filter. */
export async function branchAndRecursiveFilter(corner: number, sampleRate: number): Promise<Compared[]> {
  const signal = testSignal('impulse', sampleRate);
  const h = firstOrderHighPass(fftFrequencies(tapsFor(sampleRate), sampleRate), corner);
  const rendering = await throughBranch(impulseResponse(h), signal, sampleRate);

  // s/(s + ωc) with s = 2·fs·(1 − z⁻¹)/(1 + z⁻¹)
  const context = new window.OfflineAudioContext(1, signal.length, sampleRate);
  const [k, wc] = [2 * sampleRate, 2 * Math.PI * corner];
  const filter = context.createIIRFilter([k / (k + wc), -k / (k + wc)], [1, (wc - k) / (k + wc)]);
  const buffer = context.createBuffer(1, signal.length, sampleRate);
  buffer.copyToChannel(signal as Float32Array<ArrayBuffer>, 0);
  const source = new AudioBufferSourceNode(context, { buffer });
  source.connect(filter).connect(context.destination);
  source.start();
  const recursive = (await context.startRendering()).getChannelData(0);

  return Array.from(FREQUENCIES, (frequency) => ({
    frequency,
    got: levelDb(rendering, frequency, sampleRate) + 20 * Math.log10(2),
    expected: levelDb(recursive, frequency, sampleRate)
  }));
}
