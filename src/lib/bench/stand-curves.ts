import { ruleOfThumb } from '../acoustics/rule-of-thumb.js';
import { levelDb } from '../numeric/level-db.js';
import type { CurveStyle } from '../plot/curve-style.js';
import type { EngineCurve } from '../plot/engine-curve.js';
import type { Bench } from './bench.svelte.js';
import { PICTURE_GRID, type Stand } from './stand.js';

/** No stand's index. */
const BESIDE = -1;

/** A stand's curve for the picture; none where it cannot be built. A draft does not say where it ends: it is replaced in a moment. */
export function curveOf({ index, numeral, setup, computed }: Stand, heard: boolean): EngineCurve[] {
  if (!computed) return [];
  const { accuracy, solvedTo } = computed.answer;
  return [
    {
      id: index,
      numeral,
      name: setup.name,
      frequency: computed.response.frequency,
      levelDb: computed.responseDb,
      style: (index + 1) as CurveStyle,
      heard,
      ...(accuracy === 'full' ? { computedTo: solvedTo } : {})
    }
  ];
}

/** What the rule of thumb says of the heard mount, straight in front, beside its wave solution. */
export function ruleBeside({
  heard,
  file,
  listener
}: Pick<Bench, 'heard' | 'file' | 'listener'>): EngineCurve[] {
  if (heard.computed?.answer.model !== 'wave') return [];
  const inFront = { ...listener, angleDeg: 0 };
  return [
    {
      id: BESIDE,
      numeral: '',
      name: 'rule of thumb',
      written: 'rule of thumb',
      frequency: PICTURE_GRID,
      levelDb: levelDb(ruleOfThumb(heard.installation, file.air, inFront, PICTURE_GRID, 'full')),
      style: (heard.index + 1) as CurveStyle,
      heard: false,
      beside: true
    }
  ];
}
