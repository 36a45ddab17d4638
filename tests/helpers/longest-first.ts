import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** The files that take longest, in seconds of a core from 40 down to 4. */
const LONGEST = [
  'cli/first-command',
  'bench/sounding/headroom',
  'cli/predict.test',
  'signals/every-signal',
  'waves-shell',
  'diesel/diesel-source'
];

/** What takes longest begins first: at the end no core is left alone with one of them while the others have nothing to do. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const at = LONGEST.findIndex((name) => moduleId.includes(name));
      return at < 0 ? LONGEST.length : at;
    };
    return (await super.sort(files)).toSorted((a, b) => rank(a) - rank(b));
  }
}
