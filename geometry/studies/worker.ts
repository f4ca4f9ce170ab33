import type { MeshLibrary } from '../fitup/shapes/mesh';
import { openStudy, type StudyOrder } from './order';
import type { Round, Study } from './study';

/** What a worker is told: the order first, then chunk after chunk. */
export type ToWorker =
  | { readonly order: StudyOrder }
  | {
      /** counts the rounds of this order */
      readonly round: number;
      /** what the round starts from */
      readonly from: unknown;
      readonly chunk: number;
    };

export interface FromWorker {
  readonly chunk: number;
  readonly part: unknown;
}

/**
 * The work of one worker, wherever it runs: answers a message, or nothing to an order.
 * @param library - searches the meshes of parts; a worker without one cannot look at clearance with meshes
 */
export function createStudyWorker(library: MeshLibrary | null = null): (message: ToWorker) => FromWorker | null {
  let study: Study<unknown> | null = null;
  let open: { readonly number: number; readonly round: Round<unknown> } | null = null;
  return (message) => {
    if ('order' in message) {
      study = openStudy(message.order, undefined, library);
      open = null;
      return null;
    }
    if (study === null) throw new Error('A chunk came before its study.');
    if (open?.number !== message.round) open = { number: message.round, round: study.round(message.from) };
    return { chunk: message.chunk, part: open.round.run(message.chunk) };
  };
}
