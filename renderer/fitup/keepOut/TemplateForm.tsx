import { TEMPLATE_PAPERS, type SideName, type TemplatePaper, type Triple } from '../../../geometry/index';
import { nameOfKey } from '../../adjusters/fitterWords';
import { NumberField } from '../../look/controls/NumberField';
import { Segments } from '../../look/controls/Segments';
import { axisOf, PLANE_WAYS, type TemplateAsked } from './templateAsked';
import { planeRead } from './templateWords';

const MOST_MM = 10_000;
const AXES = ['x', 'y', 'z'] as const;
const WHERE = ['ahead of the origin', 'outboard', 'above the origin'] as const;

interface TemplateFormProps {
  /** that the plane can go through, by name, as a left wheel has them [mm] */
  readonly places: Readonly<Record<string, Triple>>;
  /** the wheel's [mm] */
  readonly centre: Triple;
  /** what templates are of: where the right side is alone they are read from its own places */
  readonly sides: readonly SideName[];
  readonly asked: TemplateAsked;
  readonly onAsk: (asked: TemplateAsked) => void;
}

/** Where the swept space is cut for a template, and on what paper. */
export const TemplateForm = ({ places, centre, sides, asked, onAsk }: TemplateFormProps) => {
  const { way, at, point, normal, paper } = asked;
  const points = Object.entries(places);
  const axis = axisOf(way);
  const offset = at ?? centre[axis];
  const setOffset = (value: number) => onAsk({ ...asked, at: value });
  const setPart = (key: 'point' | 'normal', index: number, value: number) =>
    onAsk({ ...asked, [key]: asked[key].map((old, i) => (i === index ? value : old)) as unknown as Triple });
  const through = (name: string) => {
    const place = points.find(([own]) => own === name)?.[1];
    if (!place) return;
    onAsk(way === 'own' ? { ...asked, point: place } : { ...asked, at: place[axis] });
  };
  const isThere = ([, place]: (typeof points)[number]): boolean =>
    way === 'own' ? place.every((value, i) => value === point[i]) : place[axis] === offset;
  const triple = (key: 'point' | 'normal', words: string, values: Triple, unit: string) => (
    <span className="casefield">
      <span aria-hidden="true">{words}</span>
      {AXES.map((name, index) => (
        <NumberField
          key={name}
          label={`${words} ${name}${unit === '' ? '' : `, ${unit}`}`}
          value={values[index] ?? 0}
          unit={unit}
          {...(key === 'point' ? { measures: 'length' as const } : {})}
          min={-MOST_MM}
          max={MOST_MM}
          decimals={key === 'point' ? 1 : 3}
          onSet={(value) => setPart(key, index, value)}
          onStep={(steps) =>
            setPart(key, index, Math.round(((values[index] ?? 0) + steps * (key === 'point' ? 1 : 0.1)) * 1000) / 1000)
          }
          onHome={() => setPart(key, index, 0)}
        />
      ))}
    </span>
  );
  return (
    <>
      <p className="caserow keepoutrow">
        <Segments
          label="Plane"
          options={PLANE_WAYS}
          chosen={way}
          onChoose={(next) =>
            onAsk({ ...asked, way: next, at: null, ...(next === 'own' && way !== 'own' ? { point: centre } : {}) })
          }
        />
        <select
          className="pick"
          aria-label="Plane through a point"
          value={points.find(isThere)?.[0] ?? ''}
          onChange={(event) => through(event.target.value)}
        >
          <option value="" disabled>
            through a place of its own
          </option>
          {points.map(([name]) => (
            <option key={name} value={name}>
              through {nameOfKey(name).toLowerCase()}
            </option>
          ))}
        </select>
        <select
          className="pick"
          aria-label="Paper"
          value={paper}
          onChange={(event) => onAsk({ ...asked, paper: event.target.value as TemplatePaper })}
        >
          {Object.keys(TEMPLATE_PAPERS).map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </p>
      <p className="caserow keepoutrow">
        {way === 'own' ? (
          <>
            {triple('point', 'Through', point, 'mm')}
            {triple('normal', 'Seen from', normal, '')}
          </>
        ) : (
          <span className="casefield">
            <span aria-hidden="true">
              at {AXES[axis]}, {WHERE[axis]}
            </span>
            <NumberField
              label={`Plane at ${AXES[axis]}, ${WHERE[axis]}, mm`}
              value={offset}
              unit="mm"
              measures="length"
              min={-MOST_MM}
              max={MOST_MM}
              decimals={1}
              onSet={setOffset}
              onStep={(steps) => setOffset(Math.round((offset + steps) * 100) / 100)}
              onHome={() => onAsk({ ...asked, at: null })}
            />
          </span>
        )}
        <span className="quiet">{planeRead(asked, centre, sides)}</span>
      </p>
    </>
  );
};
