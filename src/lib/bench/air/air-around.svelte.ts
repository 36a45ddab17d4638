import { untrack } from 'svelte';
import type { Air } from '../../acoustics/air.js';
import { outlineArea } from '../../acoustics/outline.js';
import type { Installation } from '../../acoustics/installation.js';
import type { Degrees, Hertz } from '../../units.js';
import { ACCURACY } from '../../waves/accuracy.js';
import type { FieldImage, SectionGrid } from '../../waves/field/field-on-grid.js';
import { puffField, puffFrequencies, type PuffField } from '../../waves/field/puff.js';
import type { WavePool } from '../../workers/waves/wave-pool.js';
import type { Bench } from '../bench.svelte.js';
import { coverCone } from '../../screens/air/cover-cone.js';
import { straightCut } from '../../drawing/cut.js';
import { sectionOf } from '../../drawing/section.js';
import { sentence } from '../../format/sentence.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import { sectionGrid } from '../../screens/air/section-grid.js';

/** Where the polar picture is asked: every so many degrees all round. */
const ANGLE_STEP: Degrees = 3;
/** So many frequencies of a puff are one question: a worker may take some while another takes others. */
const CHUNK = 4;
/** The picture beside it has so many times fewer pixels across and down: it is small. */
const COARSER = 3;
/** The wave picture shows no tone below this: it would not move within the picture. */
const LOWEST: Hertz = 100;

/** Of what a picture was made, so that what is drawn over it fits it, also while the next one is being made. */
interface Made {
  installation: Installation;
  frequency: Hertz;
}

export interface Polar extends Made {
  anglesDeg: Float64Array;
  levelDb: Float64Array;
  /** The same of the mount that levels are written against; null where it is the heard one, or cannot be solved. */
  againstDb: Float64Array | null;
}

export interface Tone extends Made {
  grid: SectionGrid;
  image: FieldImage;
  /** The same around the mount that levels are written against, coarser; null where it is the heard one, or cannot be solved. */
  beside: { installation: Installation; grid: SectionGrid; image: FieldImage } | null;
}

export interface Puff {
  installation: Installation;
  grid: SectionGrid;
  field: PuffField;
}

/**
 * The air around the heard mount, as far as it is looked at: level against angle and pressure in a section at the pointed
 * frequency, and one puff on demand. The last picture stays until the next is there.
 */
export class AirAround {
  /** The frequency that was pointed at last. */
  frequency = $state<Hertz>(1000);
  mode = $state<'tone' | 'puff'>('tone');
  polar = $state.raw<Polar | null>(null);
  tone = $state.raw<Tone | null>(null);
  puff = $state.raw<Puff | null>(null);
  /** Share of the puff that is done, while it is being worked out. */
  progress = $state<number | null>(null);
  /** One sentence where a picture could not be made. */
  problem = $state<string | null>(null);

  /** What can be shown: the pointed frequency, within what is solved. */
  readonly shownFrequency: Hertz = $derived.by(() => {
    const { answer } = this.#bench.heard.computed ?? {};
    const most =
      answer?.model === 'wave' && answer.accuracy === 'full' ? answer.solvedTo : ACCURACY.draft.highest;
    return Math.min(Math.max(this.frequency, LOWEST), most);
  });

  /** How many panels show it now; nothing is computed for none. */
  #watched = $state(0);
  #bench: Bench;
  #pool: WavePool;
  #polars = new NewestWins({ replaces: 'waiting', tell: (error) => (this.problem = sentence(error)) });
  #tones = new NewestWins({ replaces: 'waiting', tell: (error) => (this.problem = sentence(error)) });
  #puffing: AbortController | null = null;

  constructor(bench: Bench, pool: WavePool) {
    this.#bench = bench;
    this.#pool = pool;
  }

  /** What a picture is asked of: the heard mount in the wave solution, or null. */
  readonly #asked: { installation: Installation; air: Air; accuracy: 'draft' | 'full' } | null = $derived.by(
    () => {
      const { heard, file, dragging } = this.#bench;
      if (this.#watched === 0 || file.view.model !== 'wave' || heard.problem || heard.refused) return null;
      return { installation: heard.installation, air: file.air, accuracy: dragging ? 'draft' : 'full' };
    }
  );

  /** The mount that it is drawn against, if it is another one that can be solved. */
  readonly #against: Installation | null = $derived.by(() => {
    const { heard, measuredAgainst } = this.#bench;
    const { installation, problem, refused } = measuredAgainst;
    return measuredAgainst === heard || problem || refused ? null : installation;
  });

  /** Has it computed until what is returned is called: somebody looks. */
  watch(): () => void {
    untrack(() => this.#watched++);
    return () => this.#watched--;
  }

  /** Keeps the pictures in step with what is heard and pointed at. Call while a component starts. */
  connect(): void {
    $effect(() => {
      const asked = this.#asked;
      const against = this.#against;
      const frequency = this.shownFrequency;
      const { plane, distance } = this.#bench.listener;
      if (!asked) return this.#polars.withdraw();
      const anglesDeg = Float64Array.from({ length: 360 / ANGLE_STEP + 1 }, (_, i) => -180 + i * ANGLE_STEP);
      this.#polars.run(async () => {
        const levels = (installation: Installation): Promise<Float64Array> =>
          this.#pool.ask(
            { kind: 'polar', ...asked, installation, frequency, plane, distance, anglesDeg },
            { urgent: true }
          );
        const [levelDb, againstDb] = await Promise.all([
          levels(asked.installation),
          against && levels(against)
        ]);
        this.polar = { installation: asked.installation, frequency, anglesDeg, levelDb, againstDb };
        this.problem = null;
      });
    });

    $effect(() => {
      const asked = this.#asked;
      const against = this.#against;
      const frequency = this.shownFrequency;
      const { plane } = this.#bench.listener;
      if (!asked || this.mode !== 'tone') return this.#tones.withdraw();
      const grid = sectionGrid(asked.installation, plane);
      const coarse = {
        ...grid,
        columns: Math.round(grid.columns / COARSER),
        rows: Math.round(grid.rows / COARSER)
      };
      this.#tones.run(async () => {
        const frequencies = Float64Array.of(frequency);
        const around = async (installation: Installation, grid: SectionGrid) => {
          const [image] = await this.#pool.ask(
            { kind: 'field', ...asked, installation, frequencies, grid },
            { urgent: true }
          );
          coverCone(image, grid, sectionOf(installation, straightCut(plane)));
          return { installation, grid, image };
        };
        const [heard, beside] = await Promise.all([
          around(asked.installation, grid),
          against && around(against, coarse)
        ]);
        this.tone = { ...heard, frequency, beside };
        this.problem = null;
      });
    });

    const mount = $derived(this.#bench.heard.installation);
    const medium = $derived(this.#bench.file.air);
    const side = $derived(this.#bench.listener.plane);
    $effect(() => {
      // Of another mount, another air or another side it would be a lie.
      void [mount, medium, side];
      untrack(() => this.stopPuff());
      this.puff = null;
    });
  }

  /** Works out one puff of the cone, at all frequencies it is made of. */
  async makePuff(): Promise<void> {
    this.mode = 'puff';
    const asked = this.#asked;
    if (!asked || this.puff || this.progress !== null) return;
    const { air, installation } = asked;
    const { plane } = this.#bench.listener;
    const { answer } = this.#bench.heard.computed ?? {};
    const frequencies = puffFrequencies(
      answer?.accuracy === 'full' ? answer.solvedTo : ACCURACY.full.highest
    );
    const grid = sectionGrid(installation, plane);
    const controller = new AbortController();
    this.#puffing = controller;
    this.progress = 0;
    const shares: number[] = [];
    const ask = (from: number): Promise<FieldImage[]> =>
      this.#pool.ask(
        {
          kind: 'puff',
          installation,
          air,
          accuracy: 'full',
          frequencies: frequencies.slice(from, from + CHUNK),
          grid
        },
        {
          signal: controller.signal,
          onProgress: (share) => {
            shares[from] = share * Math.min(CHUNK, frequencies.length - from);
            const done = shares.reduce((sum, each) => sum + each, 0);
            this.progress = done / frequencies.length;
          }
        }
      );
    try {
      const starts = Array.from({ length: Math.ceil(frequencies.length / CHUNK) }, (_, i) => i * CHUNK);
      const images = (await Promise.all(starts.map(ask))).flat();
      const section = sectionOf(installation, straightCut(plane));
      for (const image of images) coverCone(image, grid, section);
      this.puff = { installation, grid, field: puffField(frequencies, images) };
      this.problem = null;
    } catch (error) {
      if (!controller.signal.aborted) this.problem = sentence(error);
      controller.abort();
    } finally {
      if (this.#puffing === controller) {
        this.#puffing = null;
        this.progress = null;
      }
    }
  }

  showTone(): void {
    this.stopPuff();
    this.mode = 'tone';
  }

  stopPuff(): void {
    this.#puffing?.abort();
    this.#puffing = null;
    this.progress = null;
  }

  /** Pressure per cone acceleration that is drawn at full strength, in metres: 4 cm from the cone in an endless plate. */
  fullScale({ speaker }: Installation): number {
    return outlineArea(speaker.cone) / (2 * Math.PI * 0.04);
  }
}
