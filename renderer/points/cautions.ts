import type { CarDocument, Vector, Warning } from '../../geometry/index';
import { mmPerFileUnit } from '../units/fileLength';
import { shownQuantity, withUnit } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';
import { judgedCar } from './fields/judgeEdit';

/** Something odd about the open car that breaks no rule of its file. */
export interface Caution {
  /** the field that it is of; null: of the whole car */
  readonly path: string | null;
  readonly words: string;
}

/**
 * Front and rear grounds that differ by more than this share of the wheelbase are no car that was measured with some rake: three
 * degrees, where the rakes that cars are set to are below one.
 */
const DATUM_SLIP = 0.05;

const NUMBER = /\d+(?:\.\d+)?(?:e[-+]?\d+)?(?: (?:mm|in))?/g;

/** The lengths of a report in the chosen unit. @param per - mm in one unit of its numbers */
const withLengths = (message: string, per: number, units: ShownUnits): string => {
  const shown = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  return message.replace(NUMBER, (text) => withUnit(shown.format(Number.parseFloat(text) * per), shown.unit));
};

const wheelbaseOf = ({ front, rear, units }: CarDocument): number | null => {
  const [ahead, behind] = [front?.points['wheelCentre'], rear?.points['wheelCentre']] as readonly (Vector | undefined)[];
  return ahead && behind ? Math.abs(ahead[0] - behind[0]) * mmPerFileUnit({ units } as CarDocument) : null;
};

const wordsOf = ({ code, message }: Warning, document: CarDocument, units: ShownUnits): string => {
  switch (code) {
    case 'loaded-radius-odd':
      return withLengths(message, mmPerFileUnit(document), units);
    case 'spring-loose':
      return 'The spring is loose at design: it is installed longer than its free length.';
    case 'not-level': {
      const wheelbase = wheelbaseOf(document);
      const apart = Number.parseFloat(/[\d.]+(?= mm)/.exec(message)?.[0] ?? '0');
      const isSlip = wheelbase !== null && apart > DATUM_SLIP * wheelbase;
      return `${withLengths(message, 1, units)}${isSlip ? ' Were both axles measured from the same datum?' : ''}`;
    }
    default:
      return message;
  }
};

/** What is odd about the car as it is now, in the chosen units and in the order of its file. */
export const cautionsOf = (document: CarDocument, units: ShownUnits): readonly Caution[] => {
  const judged = judgedCar(document);
  if (!judged.ok) return [];
  return judged.value.warnings.map((warning) => ({ path: warning.path || null, words: wordsOf(warning, document, units) }));
};
