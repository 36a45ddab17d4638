import type { Place } from '../../acoustics/listener.js';
import { BENCH_FILE_LIMITS } from '../../file/bench-file-limits.js';
import type { BenchFile, ModelName } from '../../file/bench-file.js';
import { isOpen, type VoteRound, type VoteStage } from '../../file/vote-round.js';
import { random } from '../../sounds/blocks/random.js';
import { runMark } from '../trials/run-mark.js';
import { shuffled } from '../trials/shuffled.js';

/** What a hall is asked, of which mounts, and how they are played. */
export interface VoteWish {
  question: string;
  /** Places in the bench's setups. */
  places: readonly number[];
  sameLoudness: boolean;
}

/** What is kept of the circumstances of a round. */
export interface VoteCircumstances {
  model: ModelName;
  /** As 2026-11-30. */
  day: string;
  /** From a source of chance: another one each time. */
  seed: number;
}

/** The bench with a round begun. */
export function withRound(
  file: BenchFile,
  { question, places, sameLoudness }: VoteWish,
  { model, day, seed }: VoteCircumstances
): BenchFile {
  const place: Place = file.listener.board ? 'layout' : 'hand';
  const round: VoteRound = {
    question,
    mounts: places.map((place) => file.setups[place].name),
    places: [...places],
    sound: file.sound.name,
    place,
    ...(file.noise?.heard && { noise: file.noise.place }),
    model,
    sameLoudness,
    day,
    seed: seed >>> 0,
    bench: runMark(file, places),
    stage: 'hear',
    hands: places.map(() => null)
  };
  return { ...file, votes: [...(file.votes ?? []), round] };
}

/** The round whose names have yet to be shown. */
export function openRound({ votes }: Pick<BenchFile, 'votes'>): VoteRound | null {
  const last = votes?.at(-1);
  return last && isOpen(last) ? last : null;
}

/** What stands behind the letters, A first, as places in the round's mounts. */
export function behindLetters({ mounts, seed }: Pick<VoteRound, 'mounts' | 'seed'>): number[] {
  return shuffled(
    mounts.map((_, i) => i),
    random(seed).uniform
  );
}

/** Whether the bench is still the one that is voted on. */
export function isSameBenchAs(file: BenchFile, round: VoteRound): boolean {
  return runMark(file, round.places) === round.bench;
}

/** All hands that have been counted. */
export function countedHands({ hands }: Pick<VoteRound, 'hands'>): number {
  return hands.reduce<number>((sum, count) => sum + (count ?? 0), 0);
}

/** The bench with so many hands for a letter of the last round, as many as there can be at most. */
export function withHands(file: BenchFile, letter: number, count: number): BenchFile {
  const hands = Math.max(0, Math.min(BENCH_FILE_LIMITS.hands, Math.round(count)));
  return withLast(file, (round) => ({ ...round, hands: round.hands.with(letter, hands) }));
}

/** The bench with the last round at another stage. Names that are covered again have been seen. */
export function withStage(file: BenchFile, stage: VoteStage): BenchFile {
  return withLast(file, (round) => ({
    ...round,
    stage,
    ...(round.stage === 'shown' && stage !== 'shown' && { seen: true })
  }));
}

/** The bench with the last round broken off; null takes that back. */
export function withBrokenOff(file: BenchFile, ended: VoteRound['ended'] | null): BenchFile {
  return withLast(file, (round) => {
    const changed = { ...round };
    if (ended) changed.ended = ended;
    else delete changed.ended;
    return changed;
  });
}

/** The bench without its last round. */
export function withoutLastRound(file: BenchFile): BenchFile {
  const votes = file.votes?.slice(0, -1) ?? [];
  if (votes.length > 0) return { ...file, votes };
  const none = { ...file };
  delete none.votes;
  return none;
}

function withLast(file: BenchFile, change: (round: VoteRound) => VoteRound): BenchFile {
  const last = file.votes?.at(-1);
  return last ? { ...file, votes: [...file.votes!.slice(0, -1), change(last)] } : file;
}
