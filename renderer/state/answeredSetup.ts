import {
  withSetting,
  withToeReset,
  type AskedToe,
  type AxleDocument,
  type AxleName,
  type CarDocument,
  type SetupDocument,
} from '../../geometry/index';
import { setupNamed } from './settings';

/** What a study found, on the setup that it started from. */
export interface FoundAnswer {
  /** the setup that was started from */
  readonly from: string;
  /** what is set, in the file's unit */
  readonly settings: SetupDocument;
  /** the axles whose toe was set anew after every move, and how */
  readonly toeOn: readonly AxleName[];
  readonly toe: AskedToe;
  /** points of the drawing that were moved, where they would be, in the file's unit */
  readonly points?: Readonly<Partial<Record<AxleName, Pick<AxleDocument, 'points' | 'right'>>>> | undefined;
}

const SIDES = ['both', 'left', 'right'] as const;

/** The setup that was started from with the answer laid on it, toe reset included. */
export const answeredSetup = (document: CarDocument, { from, settings, toeOn, toe }: FoundAnswer): SetupDocument =>
  (['front', 'rear'] as const).reduce(
    (laid, axle) =>
      SIDES.reduce(
        (made, side) =>
          Object.entries(settings[axle]?.[side] ?? {}).reduce(
            (setup, [name, value]) => withSetting(setup, axle, name, side, value),
            made,
          ),
        laid,
      ),
    withToeReset(document, setupNamed(document, from), toeOn, toe),
  );

/** The car with the points of an answer where they would be. */
export const withAnswerPoints = (document: CarDocument, points: FoundAnswer['points']): CarDocument =>
  (['front', 'rear'] as const).reduce((made, axle) => {
    const [described, moved] = [made[axle], points?.[axle]];
    if (!described || !moved) return made;
    const right = moved.right?.points;
    return {
      ...made,
      [axle]: {
        ...described,
        points: { ...described.points, ...moved.points },
        ...(right && { right: { ...described.right, points: { ...described.right?.points, ...right } } }),
      },
    };
  }, document);
