import {
  assembleCar,
  toMechanism,
  type AssembledCar,
  type CarDocument,
  type Failure,
  type Result,
  type SetupDocument,
} from '../../geometry/index';
import { setupNamed } from '../state/settings';
import { memoLast } from './memoLast';

/** An edit changes `setups` only: the mechanism is the same while the rest of the document is. */
const mechanismOf = memoLast((document: CarDocument) => toMechanism(document));

const KEPT_DOCUMENTS = 3;
let mechanismSources: readonly CarDocument[] = [];

const sameCar = (a: CarDocument, b: CarDocument): boolean =>
  a.front === b.front &&
  a.rear === b.rear &&
  a.body === b.body &&
  a.units === b.units &&
  a.masses === b.masses &&
  a.limits === b.limits;

/** The earliest known document of the same car, so that the mechanism is built once for all its setups. */
const sourceOf = (document: CarDocument): CarDocument => {
  const known = mechanismSources.find((source) => sameCar(source, document));
  if (known) return known;
  mechanismSources = [document, ...mechanismSources].slice(0, KEPT_DOCUMENTS);
  return document;
};

/**
 * The car as a setup of its file leaves it, assembled once for each setup object.
 * @returns the failure of the assembly where a setting or `setToe` cannot be reached
 */
const assembleBench = memoLast(
  (source: CarDocument, setup: SetupDocument): Result<AssembledCar, Failure> => assembleCar(mechanismOf(source), setup),
  8,
);

/** `assembleBench` by the name of a setup. */
export const assembleSetup = (document: CarDocument, name: string): Result<AssembledCar, Failure> =>
  assembleBench(sourceOf(document), setupOf(document, name));

/** Setups of a file that lists none are made anew at each asking: keep the object that names it. */
const setupOf = memoLast(setupNamed, 8);
