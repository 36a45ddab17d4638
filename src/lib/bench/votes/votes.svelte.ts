import { untrack } from 'svelte';
import { LETTERS } from '../../file/blind-run.js';
import type { VoteRound } from '../../file/vote-round.js';
import type { Bench } from '../bench.svelte.js';
import type { Sounding } from '../sounding/sounding.svelte.js';
import {
  behindLetters,
  countedHands,
  isSameBenchAs,
  openRound,
  type VoteWish,
  withBrokenOff,
  withHands,
  withoutLastRound,
  withRound,
  withStage
} from './hall-vote.js';
import { VOTE_QUESTIONS } from './vote-questions.js';
import { placesAtFirst, whyNoVote } from './vote-wish.js';

/** What hall votes are made with. */
export interface VoteParts {
  bench: Pick<Bench, 'file' | 'model' | 'stands' | 'heard' | 'measuredAgainst' | 'keepResults'>;
  sounding: Pick<Sounding, 'settled'> & {
    levels: Pick<Sounding['levels'], 'loudnessOf'>;
    hearing: Pick<Sounding['hearing'], 'listenBlind' | 'hearBlindly'>;
  };
  /** Somebody listens blind for himself: then there is no vote. */
  trials: { readonly run: unknown };
  /** A whole number within 0 … 2³² − 1, another one each time. */
  chance: () => number;
  /** As 2026-11-30. */
  today: () => string;
}

/** What of a vote is on the screen. */
export type VoteScreenName = 'plan' | 'round' | 'rounds';

/**
 * Votes of a hall. From the beginning of a round until its names are shown nobody, the presenter neither, sees what stands behind the
 * letters: it is drawn from the round's seed, so that a page that is loaded anew goes on with the very round.
 */
export class Votes {
  /** The letter that is heard, and for which hands are counted, from 0. */
  letter = $state(0);
  /** Which letters the hall has heard in this round. */
  heard = $state.raw<readonly boolean[]>([]);
  /** What the next round is to be. */
  wish = $state.raw<VoteWish>({ question: VOTE_QUESTIONS[0], places: [], sameLoudness: true });
  /** Why the last key did nothing, in one sentence. */
  note = $state<string | null>(null);

  #parts: VoteParts;
  #screen = $state<VoteScreenName | null>(null);
  /** The figure in hand is being typed: the next digit is put behind it. */
  #typing = false;

  constructor(parts: VoteParts) {
    this.#parts = parts;
  }

  readonly rounds: readonly VoteRound[] = $derived.by(() => this.#parts.bench.file.votes ?? []);
  readonly #open: VoteRound | null = $derived.by(() =>
    this.#parts.trials.run ? null : openRound(this.#parts.bench.file)
  );
  readonly #last: VoteRound | null = $derived(this.rounds.at(-1) ?? null);
  readonly #isSameBench: boolean = $derived.by(
    () => this.#last !== null && isSameBenchAs(this.#parts.bench.file, this.#last)
  );
  /** The names of mounts that have changed since are told in the table alone. */
  readonly screen: VoteScreenName | null = $derived.by(() => {
    if (this.#open) return 'round';
    return this.#screen === 'round' && !this.#isSameBench ? 'rounds' : this.#screen;
  });
  readonly shown: boolean = $derived(this.screen !== null);
  /** The round that the hall sees, before or after its names are shown. */
  readonly round: VoteRound | null = $derived(this.screen === 'round' ? this.#last : null);
  readonly letters: readonly string[] = $derived(LETTERS.slice(0, this.round?.mounts.length ?? 0));
  /** Whether what is voted on is ready to be heard. */
  readonly ready: boolean = $derived.by(() => this.#parts.sounding.settled);
  /** One sentence why the wished round cannot begin; null where it can. */
  readonly obstacle: string | null = $derived.by(() => {
    const { bench, sounding } = this.#parts;
    return whyNoVote(bench, this.wish, (place) => sounding.levels.loudnessOf(place));
  });

  /** Keeps what is heard in step with the round. Call while a component starts. */
  connect(): void {
    const { sounding } = this.#parts;
    const changed = $derived(this.#open !== null && !this.#isSameBench);
    const among = $derived(this.round?.places ?? null);
    const levelled = $derived(this.round?.sameLoudness ?? true);
    const seed = $derived(changed ? null : (this.round?.seed ?? null));
    $effect(() => {
      if (!changed) return;
      untrack(() => {
        this.#keep((file) => withBrokenOff(file, 'changed'));
        this.#screen = 'rounds';
      });
    });
    $effect(() => {
      if (!among) return;
      sounding.hearing.listenBlind(among, { levelled });
      return () => sounding.hearing.listenBlind(null);
    });
    // Every round begins with the first letter.
    $effect(() => {
      if (seed === null) return;
      untrack(() => {
        this.heard = [];
        this.#hear(0);
      });
    });
  }

  open(): void {
    this.note = null;
    this.#screen = 'plan';
    this.wish = { ...this.wish, places: placesAtFirst(this.#parts.bench) };
  }

  /** Begins the wished round, once there is nothing in its way. */
  #begin(): void {
    const { bench, chance, today } = this.#parts;
    if (this.obstacle || !this.ready) return;
    const { wish } = this;
    this.note = null;
    this.#screen = 'round';
    const circumstances = { model: bench.model, day: today(), seed: chance() };
    bench.keepResults((file) => withRound(file, wish, circumstances), { begins: true });
  }

  /** Hears a letter, and takes it in hand; after the count it can be counted anew. */
  hear(letter: number): void {
    if (this.round?.stage === 'counted' && letter < this.letters.length) this.#toStage('count');
    this.#hear(letter);
  }

  /** Hears the next or the previous letter, round the ends. */
  step(by: 1 | -1): void {
    const count = this.letters.length;
    if (count > 0) this.hear((this.letter + by + count) % count);
  }

  /** Counts hands more or fewer for the letter in hand. */
  count(by: number): void {
    if (this.round?.stage !== 'count') return;
    this.#typing = false;
    this.#setHands((this.round.hands[this.letter] ?? 0) + by);
  }

  /** A digit of the number of hands for the letter in hand. */
  type(digit: number): void {
    if (this.round?.stage !== 'count') return;
    const before = this.#typing ? (this.round.hands[this.letter] ?? 0) : 0;
    if (before > 99) return;
    this.#setHands(10 * before + digit);
    this.#typing = true;
  }

  /** On: from hearing to counting, letter by letter, to the names, to the next round. */
  goOn(): void {
    const { round } = this;
    this.note = null;
    if (!round) {
      if (this.screen === 'rounds') this.open();
      else if (this.screen === 'plan') this.#begin();
      return;
    }
    if (round.stage === 'hear') {
      this.#toStage('count');
      this.hear(0);
    } else if (round.stage === 'count') this.#nextToCount(round);
    else if (round.stage === 'counted') this.#toStage('shown');
    else this.#again(round);
  }

  /** One step back, whatever was done last by mistake. */
  goBack(): void {
    const { round } = this;
    this.note = null;
    if (!round) return this.#backFromRounds();
    if (round.stage === 'shown') this.#toStage('counted');
    else if (round.stage === 'counted') this.#backToCount();
    else if (round.stage === 'count') this.#backInCount(round);
    else if (countedHands(round) === 0) {
      this.#keep(withoutLastRound);
      this.#screen = this.#last?.stage === 'shown' ? 'round' : 'plan';
    } else this.note = 'This is where the round begins. Escape breaks it off.';
  }

  /** Leaves what is shown: a round for the table of rounds, the table and the plan for the bench. */
  leave(): void {
    this.note = null;
    const { round } = this;
    if (!round) {
      this.#screen = null;
      return;
    }
    this.#screen = 'rounds';
    if (round.stage === 'shown') return;
    if (countedHands(round) > 0) return this.#keep((file) => withBrokenOff(file, 'early'));
    // Of a round without a hand nothing is worth keeping.
    this.#keep(withoutLastRound);
    if (this.rounds.length === 0) this.#screen = null;
  }

  #hear(letter: number): void {
    const { round } = this;
    if (!round || letter < 0 || letter >= this.letters.length) return;
    this.note = null;
    this.#typing = false;
    this.letter = letter;
    this.heard = this.letters.map((_, i) => i === letter || (this.heard[i] ?? false));
    this.#parts.sounding.hearing.hearBlindly(round.places[behindLetters(round)[letter]]);
  }

  /** The same question and mounts once more, behind other letters. */
  #again({ question, places, sameLoudness }: VoteRound): void {
    this.wish = { question, places, sameLoudness };
    this.note = this.obstacle;
    this.#begin();
  }

  #nextToCount(round: VoteRound): void {
    if (round.hands[this.letter] === null) this.#setHands(0);
    const hands = this.round!.hands;
    const left = hands.map((_, i) => (this.letter + 1 + i) % hands.length).find((i) => hands[i] === null);
    if (left !== undefined) this.hear(left);
    else if (countedHands(this.round!) > 0) this.#toStage('counted');
    else this.note = 'No hand has been counted yet.';
  }

  #backInCount(round: VoteRound): void {
    const hands = round.hands[this.letter];
    if (this.#typing && hands) {
      this.#setHands(Math.floor(hands / 10));
      this.#typing = true;
    } else if (this.letter > 0) this.hear(this.letter - 1);
    else this.#toStage('hear');
  }

  #backToCount(): void {
    this.#toStage('count');
    this.hear(this.letters.length - 1);
  }

  /** A round that was broken off by mistake goes on; names that were shown are shown again. */
  #backFromRounds(): void {
    const last = this.#last;
    if (this.screen !== 'rounds' || !last || last.ended === 'changed' || !this.#isSameBench) return;
    this.#screen = 'round';
    if (last.ended) this.#keep((file) => withBrokenOff(file, null));
  }

  #setHands(count: number): void {
    this.note = null;
    this.#keep((file) => withHands(file, this.letter, count));
  }

  #toStage(stage: VoteRound['stage']): void {
    this.#typing = false;
    this.#keep((file) => withStage(file, stage));
    if (stage === 'shown') this.#screen = 'round';
  }

  #keep(change: Parameters<VoteParts['bench']['keepResults']>[0]): void {
    this.#parts.bench.keepResults(change);
  }
}
