import { loudestOf, measuresOf, type TriedWith } from '../../evaluation/fit/measures.js';
import type { Measured } from '../../evaluation/fit/ranking.js';
import { answerOf, FIELD_MODEL } from '../../evaluation/models.js';
import type { WaveAnswers } from '../../evaluation/wave-answers.svelte.js';
import type { Known, Question } from '../../evaluation/wave-jobs.js';
import type { Candidate } from '../../fitting/candidate.js';
import { smallChanges, type ChangeName } from '../../fitting/small-changes.js';
import { spaceTaken } from '../../fitting/space-taken.js';

/** What is measured of a mount, in whatever measure one asks for; its price is what it was. */
export type Figures = Pick<Measured, 'measures' | 'space' | 'loudest'>;

/** What a small change does to a line. */
export interface Matter extends Figures {
  name: ChangeName;
}

interface Asked {
  candidate: Candidate;
  question: Question;
}

/** The draft of a line, against which small changes are told. */
export async function figuresNow(
  { candidate, question }: Asked,
  tried: TriedWith,
  waves: Pick<WaveAnswers, 'tryOut'>,
  signal: AbortSignal
): Promise<Figures> {
  const known = await waves.tryOut(question, 'draft', signal);
  return figuresOf(candidate, question, known, tried);
}

/** What each small change does to a line, in the order of the changes; drafts, as they come. What cannot be solved is left out. */
export async function whatMatters(
  { candidate, question }: Asked,
  tried: TriedWith,
  waves: Pick<WaveAnswers, 'tryOut'>,
  signal: AbortSignal,
  found: (matter: Matter) => void
): Promise<void> {
  for (const { name, installation } of smallChanges(question.installation)) {
    const changed = { ...question, installation };
    let known: Known;
    try {
      known = await waves.tryOut(changed, 'draft', signal);
    } catch (error) {
      if (signal.aborted) throw error;
      continue;
    }
    found({ name, ...(await figuresOf(candidate, changed, known, tried)) });
  }
}

async function figuresOf(
  { way }: Candidate,
  question: Question,
  known: Known,
  tried: TriedWith
): Promise<Figures> {
  const answer = answerOf(FIELD_MODEL, question, known);
  const { speaker } = question.installation;
  const measures = measuresOf(answer, speaker, tried);
  const loudest = await loudestOf(answer, measures.levelDb, speaker, tried);
  return { measures, loudest, space: spaceTaken(way, question.installation) };
}
