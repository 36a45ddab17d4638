import { isMoving, type GeneratedSound } from '../../../sounds/kinds.js';
import { noteName } from '../../../sounds/blocks/note-name.js';
import type { BenchSound } from '../../../file/bench-file.js';
import { frequencyWords } from '../../../format/frequency-words.js';
import { INCH } from '../../../format/length-units.js';
import { speedWords } from '../../../format/speed-words.js';

/** What a sound is, in half a line: what makes it the one it is. */
export function soundSummary(sound: GeneratedSound, inches: boolean): string {
  switch (sound.kind) {
    case 'diesel':
      return `${sound.cylinders} cylinders ${sound.layout}, ${sound.cycle}, ${sound.idleRpm} to ${sound.fullRpm} rpm`;
    case 'steam': {
      const drivers = inches
        ? `${Math.round(sound.driverDiameter / INCH)} in`
        : `${sound.driverDiameter.toFixed(2)} m`;
      return `${sound.cylinders} cylinders, drivers ${drivers}, to ${speedWords(sound.topSpeed, inches)}`;
    }
    case 'electric':
      return `${sound.inverter > 0 ? 'inverter and motors' : 'motors and gears'}, to ${speedWords(sound.topSpeed, inches)}`;
    case 'horn':
    case 'whistle':
      return sound.chord.map(noteName).join(', ');
    case 'bell':
      return 'an engine’s bell, not tuned';
    case 'crossing':
      return sound.gongs === 2 ? 'two gongs in turns' : 'one gong, again and again';
    case 'squeal':
      return 'a wheel that slips and sticks';
    case 'slack':
      return 'couplers taking up their play along a train';
    case 'compressor':
      return 'pumps, then lets off';
    case 'pinkNoise':
      return 'equal power in every octave';
    case 'whiteNoise':
      return 'equal power in every hertz';
    case 'sweep':
      return `one tone gliding ${sound.to > sound.from ? 'up' : 'down'} through all pitches`;
    case 'steppedTones':
      return 'a tone at every third octave, one after the other';
    case 'bursts':
      return 'short tones with silence between';
    case 'puff':
      return `one push of the cone, again and again, up to ${frequencyWords(sound.upper)}`;
  }
}

/** The name a sound goes by on the screen. */
export function soundWords(sound: BenchSound): string {
  return sound.name;
}

/** What a sound is of: an engine only where there is one with a lever. */
export function ofWhat(sound: BenchSound): 'engine' | 'sound' {
  return isMoving(sound) ? 'engine' : 'sound';
}
