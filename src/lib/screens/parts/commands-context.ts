import { createContext } from 'svelte';

/** Everything that a key or a button can ask of the lab. */
export type CommandName =
  | `hear ${number}`
  | 'play'
  | 'start'
  | 'smaller'
  | 'larger'
  | 'smaller by ten'
  | 'larger by ten'
  | 'previous'
  | 'next'
  | 'silence'
  | 'grow'
  | 'grow in the hall'
  | `ask for Shift${string}`
  | 'loudness'
  | 'model'
  | 'board'
  | 'air'
  | 'air in the hall'
  | 'projector'
  | 'leave'
  | 'invert'
  | 'fullscreen'
  | 'trials'
  | 'leave trials'
  | `letter ${string}`
  | `answer ${number}`
  | 'vote'
  | 'leave vote'
  | 'next letter'
  | 'previous letter'
  | 'on'
  | 'back'
  | 'a hand more'
  | 'a hand less'
  | `digit ${number}`
  | 'undo'
  | 'redo'
  | 'save'
  | 'open'
  | 'script'
  | 'keep scene'
  | 'keep scene here'
  | 'run the script'
  | 'scene as kept'
  | 'previous scene'
  | 'next scene'
  | 'black'
  | 'presenter'
  | 'keys'
  | 'help'
  | 'speaker'
  | 'fit';

/** The lab's commands as a screen asks for them. */
export interface Commands {
  run: (name: CommandName) => void;
  /** The key that does the same, as it is written in the list of keys. */
  keyOf: (name: CommandName) => string;
}

export const [getCommands, setCommands] = createContext<Commands>();
