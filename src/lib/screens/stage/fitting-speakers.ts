import type { Installation } from '../../acoustics/installation.js';
import { checkInstallation } from '../../acoustics/mounts/check-installation.js';
import { refusal } from '../../acoustics/refusal.js';
import { heardSpeaker } from '../../bench/speakers.js';
import type { BenchSpeaker } from '../../file/bench-file.js';

/** The keys of those that can be heard in a mount, in their order. */
export function fittingSpeakers(
  choices: Readonly<Record<string, BenchSpeaker>>,
  { mount, turn }: Pick<Installation, 'mount' | 'turn'>
): string[] {
  return Object.keys(choices).filter((key) => {
    const speaker = heardSpeaker(choices[key]);
    return speaker !== null && refusal(() => checkInstallation({ speaker, mount, turn })) === null;
  });
}
