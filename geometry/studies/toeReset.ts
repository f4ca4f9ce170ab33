import type { AxleName, CarDocument, SetupDocument } from '../car/document';
import { withAxleValue } from '../setup/setupEdits';

/** Whether a study sets toe after every move: to the setup's own (else design) toe, or to a number [degrees]; left as the setup has it otherwise. */
export type AskedToe = true | number | undefined;

/** The setup with the toe reset that a study asks for, on the axles named that have a toe adjuster. */
export function withToeReset(
  document: CarDocument,
  setup: SetupDocument,
  axles: readonly AxleName[],
  asked: AskedToe,
): SetupDocument {
  if (asked === undefined) return setup;
  return axles.reduce((made, axle) => {
    const described = document[axle];
    if (described?.toeAdjuster === undefined) return made;
    const toe = asked === true ? (made[axle]?.setToe ?? described.wheel.toe) : asked;
    return withAxleValue(made, axle, 'setToe', toe);
  }, setup);
}
