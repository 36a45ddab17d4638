import { flushSync } from 'svelte';
import { onTestFinished } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import type { Recording } from '../../../../src/lib/bench/sounding/open-recording.js';
import type { Room } from '../../../../src/lib/bench/sounding/playback.svelte.js';
import { Sounding, type SoundingParts } from '../../../../src/lib/bench/sounding/sounding.svelte.js';
import type { WaveAnswers } from '../../../../src/lib/evaluation/wave-answers.svelte.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import type { BenchFile } from '../../../../src/lib/file/bench-file.js';
import type { LabClient } from '../../../../src/lib/workers/sound/client.js';
import type { Question } from '../../../../src/lib/workers/sound/protocol.js';
import { aTurn } from '../../../helpers/a-turn.js';

export const RATE = 8000;

/**
 * A worker whose sounds are a few samples and whose peaks a test chooses. Questions of a held kind wait until they are let
 * go.
 */
export function fakeLab() {
  const asked: Question[] = [];
  const held: Record<string, (() => void)[] | undefined> = {};
  const refused: Record<string, string | undefined> = {};
  const peaks = { now: 1 };
  const hold = (kind: string): void => void (held[kind] = []);
  const letGo = async (kind: string): Promise<void> => {
    const waiting = held[kind] ?? [];
    held[kind] = undefined;
    for (const go of waiting) go();
    await settled();
  };
  const answers: Record<string, (question: never) => unknown> = {
    sound: () => new Float32Array(16).fill(0.1),
    ride: () => ({ samples: new Float32Array(24).fill(0.2), loopFrom: 8 }),
    blast: () => ({ samples: new Float32Array(20).fill(0.3), loopFrom: 4 }),
    keep: () => ({ gain: 1 }),
    figures: () => ({ power: new Float64Array(9).fill(1), binWidth: RATE / 16, loudness: -23, peak: 0.1 }),
    place: () => new Float32Array(16).fill(0.1),
    forget: () => null,
    loudnessThrough: ({ impulseResponses }: { impulseResponses: Float32Array[] }) =>
      impulseResponses.map((_, i) => -30 - 6 * i),
    peaksThrough: ({ impulseResponses }: { impulseResponses: Float32Array[] }) =>
      impulseResponses.map(() => peaks.now)
  };
  const lab = {
    onDied: undefined,
    close: () => undefined,
    ask: async (question: Question) => {
      asked.push(question);
      const waiting = held[question.kind];
      if (waiting) await new Promise<void>((resolve) => waiting.push(resolve));
      const message = refused[question.kind];
      if (message) throw new Error(message);
      return answers[question.kind](question as never);
    }
  } as Pick<LabClient, 'ask' | 'onDied' | 'close'>;
  return { lab, asked, hold, letGo, refused, peaks };
}

/** A room that notes what was done in it, one line a deed. */
export function fakeRoom() {
  const deeds: string[] = [];
  const note =
    (name: string, figure?: (...values: never[]) => unknown) =>
    (...values: unknown[]): void =>
      void deeds.push([name, ...(figure ? [figure(...(values as never[]))] : values)].join(' '));
  const room = {
    sampleRate: RATE,
    now: 0,
    setBranch: note(
      'branch',
      (index: number, filter: Float32Array) => `${index} ${filter.some((x) => x !== 0)}`
    ),
    hear: note('hear'),
    hearAcrossPause: note('hear across a pause'),
    silence: note('silence'),
    setSound: note(
      'sound',
      (samples: Float32Array, { fade }: { fade?: number }) => `${samples.length} ${fade}`
    ),
    setNoise: note('noise', (samples: Float32Array) => samples.length),
    setNoiseLevel: note('noise level'),
    setHorn: note('horn', (samples: Float32Array) => samples.length),
    blow: note('blow'),
    setBenchGain: note('gain', (gain: number, ramp?: number) => `${gain} ${ramp}`),
    setVolume: note('volume'),
    play: async () => note('play')(),
    stop: note('stop'),
    earCheck: async () => note('ear check')(),
    close: async () => note('close')()
  } as unknown as Room;
  return { room, deeds };
}

/** Everything that waits a task or less has gone on. */
export async function settled(): Promise<void> {
  for (let i = 0; i < 12; i++) {
    flushSync();
    await aTurn();
  }
}

/** Longer than a change has to stay that follows another one fast. */
export async function rested(): Promise<void> {
  await settled();
  await new Promise((resolve) => setTimeout(resolve, 200));
  await settled();
}

export function recordingOf(file: File): Recording {
  const samples = new Float32Array(4 * RATE).fill(0.1);
  return { id: 1, name: file.name, samples, sampleRate: RATE, duration: 4, start: 0, end: 4, warning: null };
}

/** The sound of a bench, whole, with nothing real under it. It ends with the test. */
export function soundingAtHand({
  file = demoBench(),
  waves = null,
  ...parts
}: Omit<SoundingParts, 'lab'> & {
  file?: BenchFile;
  waves?: Pick<WaveAnswers, 'best' | 'refusal' | 'draft'> | null;
} = {}) {
  const lab = fakeLab();
  const { room, deeds } = fakeRoom();
  const bench = new Bench(file, waves);
  bench.sampleRate = RATE;
  const sounding = new Sounding(bench, waves, {
    lab: lab.lab,
    openRoom: async () => room,
    openFile: async (chosen) => recordingOf(chosen),
    fetchAudio: async () => undefined,
    ...parts
  });
  onTestFinished($effect.root(() => sounding.connect()));
  const since = (deed: string): string[] => deeds.slice(deeds.lastIndexOf(deed) + 1);
  return { ...lab, worker: lab.lab, bench, sounding, room, deeds, since };
}
