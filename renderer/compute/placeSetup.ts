import { placeAxle, toRadians, type AxleName, type CarDocument, type PlacedAxle } from '../../geometry/index';
import { assembleSetup } from './assembleBench';
import type { BenchQuestion } from './answerBench';
import { memoLast } from './memoLast';

/**
 * Where an axle is at a position of the bench, whichever axle is on the bench; null where it has no answer.
 * An axle that is not steered stays where it is when the rack moves.
 */
const place = (
  document: CarDocument,
  setup: string,
  axle: AxleName,
  { travel, rollDeg, rack }: BenchQuestion['position'],
): PlacedAxle | null => {
  const car = assembleSetup(document, setup);
  if (!car.ok || car.value[axle] === null) return null;
  const steered = document[axle]?.steering !== undefined;
  const position = { travel, rack: steered ? rack : 0 };
  const placed = placeAxle(car.value, axle, rollDeg === 0 ? position : { ...position, roll: toRadians(rollDeg) });
  return placed.ok ? placed.value : null;
};

/** `place`, remembering the last few by the identity of document and position. */
export const placeSetup = memoLast(place, 8);

/**
 * An axle at several positions at once, for paths and envelopes; positions without an answer are null.
 * Remembered while the car, the setup and the roll stay: only the last position asked for changes then.
 */
export const placeMany = memoLast(
  (
    document: CarDocument,
    setup: string,
    axle: AxleName,
    travels: readonly number[],
    racks: readonly number[],
  ): readonly (readonly (PlacedAxle | null)[])[] =>
    racks.map((rack) => travels.map((travel) => place(document, setup, axle, { travel, rollDeg: 0, rack }))),
  6,
);
