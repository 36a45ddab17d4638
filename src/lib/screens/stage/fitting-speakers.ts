import type { Installation } from '../../acoustics/installation.js';
import { checkInstallation } from '../../acoustics/mounts/check-installation.js';
import { refusal } from '../../acoustics/refusal.js';
import { SPEAKERS } from '../../acoustics/speaker/speakers.js';
import type { Speaker } from '../../acoustics/speaker/speaker.js';
import type { BenchFile, BenchSpeaker } from '../../file/bench-file.js';

/** The reference sizes, and over them what a bench has made of them and whatever else it brought. */
export function speakersToChoose({ speakers }: Pick<BenchFile, 'speakers'>): Record<string, BenchSpeaker> {
  return { ...SPEAKERS, ...speakers };
}

/** A speaker as it can be heard; null where it has no motor values. */
export function heardSpeaker({ motor, ...rest }: BenchSpeaker): Speaker | null {
  return motor ? { ...rest, motor } : null;
}

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
