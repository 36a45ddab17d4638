import { frontAlone } from '../../../acoustics/rule/front-alone.js';
import type { Listener } from '../../../acoustics/listener.js';
import { levelDb } from '../../../numeric/level-db.js';
import type { CurveStyle } from '../../../plot/curve-style.js';
import type { ResponseCurve, ResponseGround } from '../../../plot/response-curve.js';
import type { BenchFile } from '../../../file/bench-file.js';
import { drivenAnswer, takenInto } from '../../../evaluation/answer.js';
import { answerOf, isOffered, models } from '../../../evaluation/models.js';
import { MODEL_TITLES } from '../words/model-titles.js';
import { PICTURE_GRID, type Stand } from '../../../evaluation/stand.js';

/** No stand's index. */
const BESIDE = -1;

/** The heard mount, its air, and where one listens: all that the rule of thumb asks for. */
export interface HeardWhere {
  heard: Pick<Stand, 'index' | 'installation' | 'computed'>;
  file: Pick<BenchFile, 'air'>;
  listener: Listener;
}

/** The colour and line that a stand goes by in every picture. */
export function styleOf({ index }: Pick<Stand, 'index'>): CurveStyle {
  return (index + 1) as CurveStyle;
}

/** A stand's curve for the picture; none where it cannot be built. A draft does not say where it ends: it is replaced in a moment. */
export function curveOf(stand: Stand, heard: boolean): ResponseCurve[] {
  const { index, numeral, setup, computed } = stand;
  if (!computed) return [];
  const { provisional, solvedTo } = computed.answer;
  return [
    {
      id: index,
      numeral,
      name: setup.name,
      frequency: computed.response.frequency,
      levelDb: computed.responseDb,
      style: styleOf(stand),
      heard,
      ...(!provisional && solvedTo < Infinity ? { computedTo: solvedTo } : {})
    }
  ];
}

/** What the rule of thumb says of the heard mount, straight in front, beside its wave solution; nothing over a board, of which it knows nothing. */
export function ruleBeside({ heard, file, listener }: HeardWhere): ResponseCurve[] {
  const other = heard.computed && models[heard.computed.answer.model].standIn;
  if (!other || !isOffered(other, listener, [heard.installation.mount])) return [];
  const { installation } = heard;
  const inFront = { ...listener, angleDeg: 0 };
  const own = answerOf(other, { installation, air: file.air, listener: inFront }, null);
  const { respond } = drivenAnswer(own, heard.computed!.answer);
  return [
    {
      id: BESIDE,
      numeral: '',
      name: MODEL_TITLES[other],
      frequency: PICTURE_GRID,
      levelDb: levelDb(respond(PICTURE_GRID)),
      style: styleOf(heard),
      heard: false,
      beside: true
    }
  ];
}

/** What the heard mount's speaker would give if nothing of its back came round; none of a mount that cannot be built. */
export function frontGround({ heard, file }: Pick<HeardWhere, 'heard' | 'file'>): ResponseGround | undefined {
  if (!heard.computed) return undefined;
  const front = frontAlone(heard.installation.speaker, file.air, PICTURE_GRID);
  return { frequency: front.frequency, levelDb: levelDb(takenInto(front, heard.computed.answer)) };
}
