import type { CarDocument, SetupDocument } from '../car/document';
import type { QuestionDocument } from '../car/questionDocument';
import type { CarMechanism } from '../car/mechanism';
import { toMechanism } from '../car/toMechanism';
import { clearanceStudy, type ClearanceAnswer, type ClearanceQuestion } from '../fitup/clearance/clearance';
import type { MeshFiles } from '../fitup/meshes/partMeshes';
import type { MeshLibrary } from '../fitup/shapes/mesh';
import { influenceStudy, type Influence, type InfluenceQuestion } from './influence';
import { mapStudy, type MapAnswer, type MapQuestion } from './map';
import { MOST_TRIED, reachStudy, type ReachAnswer } from './reach';
import type { Study } from './study';
import { sweepStudy, type Sweep, type SweepQuestion } from './sweep';
import { waysStudy } from './ways';
import type { Ways, WaysQuestion } from './waysQuestion';

/** A study as plain data, so that it can be sent to whoever works on it. */
export type StudyOrder =
  | { readonly study: 'influence'; readonly document: CarDocument; readonly question: InfluenceQuestion }
  | { readonly study: 'ways'; readonly document: CarDocument; readonly question: WaysQuestion }
  | {
      readonly study: 'reach';
      readonly document: CarDocument;
      readonly setup: SetupDocument;
      readonly question: QuestionDocument;
      /** triangles of the parts that are a mesh, for the least gap */
      readonly meshes?: MeshFiles;
    }
  | { readonly study: 'map'; readonly document: CarDocument; readonly question: MapQuestion }
  | { readonly study: 'clearance'; readonly document: CarDocument; readonly question: ClearanceQuestion }
  | { readonly study: 'sweep'; readonly document: CarDocument; readonly question: SweepQuestion };

export interface StudyAnswers {
  readonly influence: Influence;
  readonly ways: Ways;
  readonly reach: ReachAnswer;
  readonly map: MapAnswer;
  readonly sweep: Sweep;
  readonly clearance: ClearanceAnswer;
}

/**
 * @param mechanism - of the order's document, where there is one already
 * @param library - searches meshes; who only hands chunks on and puts their answers together needs none
 */
export function openStudy<Order extends StudyOrder>(
  order: Order,
  mechanism: CarMechanism = toMechanism(order.document),
  library: MeshLibrary | null = null,
): Study<StudyAnswers[Order['study']]> {
  return studyOf(order, mechanism, library) as Study<StudyAnswers[Order['study']]>;
}

function studyOf(order: StudyOrder, mechanism: CarMechanism, library: MeshLibrary | null): Study<unknown> {
  switch (order.study) {
    case 'influence':
      return influenceStudy(mechanism, order.question);
    case 'ways':
      return waysStudy(mechanism, order.question, library);
    case 'reach':
      return reachStudy(mechanism, order.question, order.setup, MOST_TRIED, { files: order.meshes, library });
    case 'map':
      return mapStudy(mechanism, order.question);
    case 'clearance':
      return clearanceStudy(mechanism, order.question, library);
    case 'sweep':
      return sweepStudy(mechanism, order.question);
  }
}
