/** What a bench file may hold: far more than a bench ever does, far less than would hurt. */
export const BENCH_FILE_LIMITS = {
  /** Characters of the whole text. */
  characters: 1_000_000,
  /** Objects and lists inside each other. */
  depth: 16,
  speakers: 64,
  setups: 64,
  /** Of a speaker or a mount, in whatever money. */
  price: [0, 100_000],
  /** Sounds that a model makes. */
  modelSounds: 3,
  /** Characters of a name or a speaker's key. */
  name: 80,
  /** Characters of a setup's notes in a file, and as many as the page lets one type. */
  notes: 4000,
  typedNotes: 2000,
  /** Runs of blind trials. */
  trials: 200,
  /** Scenes of a script, and what one may hold: minutes planned, Hz of its tone, signs and lines of its text. */
  scenes: 60,
  sceneMinutes: [0.1, 60],
  sceneFrequency: [20, 20_000],
  sceneText: 320,
  sceneLines: 8,
  /** Rounds of hall votes, and hands for one letter. */
  votes: 200,
  hands: 999
} as const;
