import type { AxleDocument, AxleName } from '../../../geometry/index';
import { useFieldUnit } from '../../look/controls/useFieldUnit';
import { useUnits } from '../../look/units';
import type { GivenAxle, GivenPoint, LayoutName } from '../../state/begunCar';
import { columnPlaces } from '../columnPlaces';
import { roleOf } from '../pointRows';
import { GivenCell } from './GivenCell';
import { TYPICAL_AXLES } from './typicalAxles';
import { pointsOfLayout, WORDS } from './unfinishedCar';

interface GivenAxleTableProps {
  readonly axle: AxleName;
  readonly layout: LayoutName;
  readonly given: GivenAxle;
  readonly onGive: (given: GivenAxle) => void;
}

const AXES = ['X fwd', 'Y left', 'Z up'] as const;
const STANCE = [
  ['camber', 'angle', '− leans in'],
  ['toe', 'angle', '+ in'],
  ['loadedRadius', 'length', 'wheel centre over ground'],
] as const;

const NOTHING: GivenPoint = [null, null, null];

const stateOf = (point: GivenPoint, isOptional: boolean): string => {
  const missing = AXES.filter((_, index) => point[index] === null).map((axis) => axis.charAt(0));
  if (missing.length === 0) return 'given';
  if (missing.length < AXES.length) return `${missing.join(', ')} missing`;
  return isOptional ? 'may be left out' : 'not given yet';
};

/** Every number that an axle is asked for: its points, and how the wheel stood when they were measured. */
export const GivenAxleTable = ({ axle, layout, given, onGive }: GivenAxleTableProps) => {
  const units = useUnits();
  const { title, layout: kind, rods, trailingArm, spring } = TYPICAL_AXLES[layout];
  const joined: AxleDocument = {
    layout: kind,
    points: {},
    wheel: { camber: 0, toe: 0, loadedRadius: 1 },
    ...(rods && { rods }),
    ...(trailingArm && { trailingArm }),
    ...(spring && { spring }),
  };
  const { format } = useFieldUnit('length', 'mm', 2);
  const places = AXES.map((_, index) =>
    columnPlaces(
      Object.values(given.points).flatMap((point) => (typeof point[index] === 'number' ? [format(point[index])] : [])),
    ),
  );
  const give = (name: string, index: number, value: number | null) => {
    const point = (given.points[name] ?? NOTHING).map((old, i) => (i === index ? value : old)) as unknown as GivenPoint;
    onGive({ ...given, points: { ...given.points, [name]: point } });
  };
  return (
    <section className="givenaxle" aria-label={`${axle === 'front' ? 'Front' : 'Rear'} axle`}>
      <div className="layouthead">
        <h2>
          {axle === 'front' ? 'Front' : 'Rear'} axle, {title.toLowerCase()}
        </h2>
        <span className="quiet">left side, car frame, {units.length}</span>
      </div>
      <table className="pointtable">
        <thead>
          <tr>
            <th scope="col">Point</th>
            {AXES.map((axis) => (
              <th key={axis} scope="col" className="number">
                {axis}
              </th>
            ))}
            <th scope="col">Given</th>
          </tr>
        </thead>
        <tbody>
          {pointsOfLayout(layout).map(({ name, isOptional }) => {
            const point = given.points[name] ?? NOTHING;
            return (
              <tr key={name}>
                <th scope="row">
                  <b>{name}</b>
                  <span>{roleOf(joined, name)}</span>
                </th>
                {AXES.map((axis, index) => (
                  <td key={axis}>
                    <GivenCell
                      label={`${name}, ${axis}, ${axle}`}
                      measures="length"
                      value={point[index] ?? null}
                      places={places[index] ?? 0}
                      onGive={(value) => give(name, index, value)}
                    />
                  </td>
                ))}
                <td className="givenstate">{stateOf(point, isOptional)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <div className="givenstance">
        <span>As it stood when measured:</span>
        {STANCE.map(([key, measures, sign]) => (
          <label key={key}>
            <span>
              {WORDS[key]} <span className="quiet">{sign}</span>
            </span>
            <GivenCell
              label={`${WORDS[key]}, ${axle}`}
              measures={measures}
              value={given[key]}
              onGive={(value) => onGive({ ...given, [key]: value })}
            />
          </label>
        ))}
      </div>
    </section>
  );
};
