import type { CarDocument, SetupDocument } from '../../../geometry/index';
import { isSameDocument } from '../../state/sameDocument';
import { setupNamed } from '../../state/settings';

/** What of a setup is turned, not what is written about it. */
const turned = ({ notes: _notes, record: _record, ...rest }: SetupDocument): SetupDocument => rest;

/** What of a car file decides the answer of a study. */
const deciding = (document: CarDocument): object => {
  const { questions, setups, onCar, notes, name, revision, date, measurements, survey, uncertainty, ...rest } = document;
  return rest;
};

/** Whether the car or the setup that was asked about says something else by now. */
export const isStale = (asked: CarDocument, now: CarDocument, setup: string): boolean =>
  asked !== now &&
  !(
    isSameDocument(turned(setupNamed(asked, setup)), turned(setupNamed(now, setup))) &&
    isSameDocument(deciding(asked), deciding(now))
  );
