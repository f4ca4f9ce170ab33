import { findReading, type AxleName, type CarDocument } from '../../../geometry/index';
import { Popover } from '../../look/controls/Popover';
import { useUnits } from '../../look/units';
import { shownReading } from '../../units/shownQuantity';
import { ruleWords } from '../map/limitWords';
import { faultOfNumber, PLAIN_NUMBER } from '../question/fieldValue';
import { placeWords } from '../question/place';
import { PickWords, PlaceFields } from '../question/PlacePicker';
import { QuestionField } from '../question/QuestionField';
import { axlesOf } from '../question/readingChoices';
import { ReadingSelect } from '../question/ReadingSelect';
import { wantedOf, type ReachFaults } from './readReach';
import { withWantedReading, withWhere, type Motion, type Relation, type WantedForm } from './reachForm';
import { shownMotion, stretchWords } from './reachWords';
import { rulesAgainst } from './rulesAgainst';

const RELATIONS: readonly { readonly name: Relation; readonly label: string }[] = [
  { name: 'value', label: 'to be' },
  { name: 'above', label: 'above' },
  { name: 'below', label: 'below' },
  { name: 'steady', label: 'within ±' },
  { name: 'within', label: 'from … to' },
];
const GREATEST = { below: 'below', steady: 'within plus or minus', within: 'to' } as const;
const SIDES = ['both', 'left', 'right'] as const;

interface WantedRowProps {
  readonly wanted: WantedForm;
  readonly document: CarDocument;
  /** stands before the ids of the sentences that say what is wrong */
  readonly idBase: string;
  readonly faults: ReachFaults;
  readonly isFirst: boolean;
  readonly isLast: boolean;
  readonly onChange: (wanted: WantedForm) => void;
  readonly onMove: (by: 1 | -1) => void;
  readonly onRemove: () => void;
}

/** One thing that is wanted: which reading, whose, where, what, how near. */
export const WantedRow = ({ wanted, document, idBase, faults, isFirst, isLast, onChange, onMove, onRemove }: WantedRowProps) => {
  const units = useUnits();
  const entry = findReading(wanted.reading);
  const name = entry?.name ?? wanted.reading;
  const shown = entry ? shownReading(entry, units) : null;
  const spoken = shown === null ? '' : `, ${shown.unit === '°' ? 'degrees' : shown.unit}`;
  const key = (field: string): string => `wanted.${wanted.id}.${field}`;
  const faultId = (field: string): string | null => (faults[key(field)] === undefined ? null : `${idBase}-${key(field)}`);
  const own = Object.entries(faults).filter(([field]) => field.startsWith(`wanted.${wanted.id}.`));
  const axles = axlesOf(document);
  const asked = wantedOf(wanted, document);
  const against = (asked ? rulesAgainst(document, asked) : []).map((limit) => ruleWords(limit, document, units)).join('; ');
  const part = (next: Partial<WantedForm>): void => onChange({ ...wanted, ...next });
  return (
    <li className="wantedrow" aria-label={`Wanted: ${name}`}>
      <div className="wantedline">
        <ReadingSelect
          label="Reading wanted"
          value={wanted.reading}
          owners={['corner', 'axle', 'car']}
          faultId={faultId('reading')}
          onChange={(reading) => onChange(withWantedReading(wanted, document, reading))}
        />
        {entry?.of === 'corner' && (
          <select
            className="pick"
            aria-label={`Whose ${name}`}
            aria-describedby={faultId('axle') ?? undefined}
            value={`${wanted.axle} ${wanted.side}`}
            onChange={(event) => {
              const [axle, side] = event.target.value.split(' ') as [AxleName, WantedForm['side']];
              part({ axle, side });
            }}
          >
            {axles.flatMap((axle) =>
              SIDES.map((side) => (
                <option key={`${axle} ${side}`} value={`${axle} ${side}`}>
                  {axle}, {side}
                </option>
              )),
            )}
            {!axles.includes(wanted.axle) && <option value={`${wanted.axle} ${wanted.side}`}>{wanted.axle}</option>}
          </select>
        )}
        {entry?.of === 'axle' && (
          <select
            className="pick"
            aria-label={`Whose ${name}`}
            aria-describedby={faultId('axle') ?? undefined}
            value={wanted.axle}
            onChange={(event) => part({ axle: event.target.value as AxleName })}
          >
            {[...new Set([...axles, wanted.axle])].map((axle) => (
              <option key={axle} value={axle}>
                {axle}
              </option>
            ))}
          </select>
        )}
        <WherePicker name={name} wanted={wanted} hasFault={faultId('where') !== null} onChange={onChange} />
        <select
          className="pick"
          aria-label={`How ${name} is wanted`}
          value={wanted.relation}
          onChange={(event) => part({ relation: event.target.value as Relation })}
        >
          {RELATIONS.map((relation) => (
            <option key={relation.name} value={relation.name}>
              {relation.label}
            </option>
          ))}
        </select>
        {shown && (
          <>
            {wanted.relation === 'value' && (
              <QuestionField
                label={`${name} to be${spoken}`}
                field={wanted.value}
                shown={shown}
                faultId={faultId('value')}
                onChange={(value) => part({ value })}
              />
            )}
            {(wanted.relation === 'above' || wanted.relation === 'within') && (
              <QuestionField
                label={`${name} ${wanted.relation === 'above' ? 'above' : 'from'}${spoken}`}
                field={wanted.least}
                shown={shown}
                faultId={faultId('least')}
                onChange={(least) => part({ least })}
              />
            )}
            {wanted.relation === 'within' && <span className="quiet">to</span>}
            {(wanted.relation === 'below' || wanted.relation === 'within' || wanted.relation === 'steady') && (
              <QuestionField
                label={`${name} ${GREATEST[wanted.relation]}${spoken}`}
                field={wanted.greatest}
                shown={shown}
                faultId={faultId('greatest')}
                onChange={(greatest) => part({ greatest })}
              />
            )}
            {wanted.relation === 'value' ? (
              <span className="quiet">±</span>
            ) : (
              <span
                className="quiet"
                title="What a miss is weighed by where not everything can be had; it makes the range no wider"
              >
                weighed by
              </span>
            )}
            <QuestionField
              label={`${name}, tolerance${spoken}`}
              className="tolerance"
              field={wanted.tolerance}
              shown={shown}
              faultId={faultId('tolerance')}
              onChange={(tolerance) => part({ tolerance })}
            />
          </>
        )}
        <Popover
          button={{ className: 'button bare linemenu', label: `${name}: move or remove`, title: 'Move or remove', content: '⋯' }}
          label={name}
          role="menu"
        >
          {(close) => (
            <>
              <button
                type="button"
                role="menuitem"
                disabled={isFirst}
                onClick={() => {
                  close();
                  onMove(-1);
                }}
              >
                Up
              </button>
              <button
                type="button"
                role="menuitem"
                disabled={isLast}
                onClick={() => {
                  close();
                  onMove(1);
                }}
              >
                Down
              </button>
              <button type="button" role="menuitem" onClick={onRemove}>
                Remove
              </button>
            </>
          )}
        </Popover>
      </div>
      {own.length === 0 && against !== '' && (
        <p className="qcaution" role="status">
          No answer goes there: {against}.
        </p>
      )}
      {own.map(([field, fault]) => (
        <p key={field} id={`${idBase}-${field}`} className="qfault" role="alert">
          {fault}
        </p>
      ))}
    </li>
  );
};

interface WherePickerProps {
  readonly name: string;
  readonly wanted: WantedForm;
  readonly hasFault: boolean;
  readonly onChange: (wanted: WantedForm) => void;
}

const MOTIONS: readonly { readonly name: Motion; readonly label: string }[] = [
  { name: 'bump', label: 'bump' },
  { name: 'roll', label: 'roll' },
  { name: 'steer', label: 'steer (rack)' },
];

/** At one place, or over a whole stretch of bump, roll or steer; the value, or its change from zero. */
const WherePicker = ({ name, wanted, hasFault, onChange }: WherePickerProps) => {
  const units = useUnits();
  const part = (next: Partial<WantedForm>): void => onChange({ ...wanted, ...next });
  const at = wanted.apart ? `bump ${wanted.apart[0]} left, ${wanted.apart[1]} right` : placeWords(wanted.place, units);
  const place =
    wanted.where === 'at' ? `at ${at}` : `over ${stretchWords(wanted.motion, wanted.from.value, wanted.to.value, units)}`;
  const words = wanted.isChange ? `change, ${place.replace(/^over /, '')}` : place;
  const shown = shownMotion(wanted.motion, units);
  const unit = shown.unit === '°' ? 'degrees' : shown.unit;
  return (
    <Popover
      button={{
        className: `pick where${hasFault ? ' faulty' : ''}`,
        label: `${name} is wanted ${words}`,
        title: `${name} ${words}`,
        content: <PickWords>{words}</PickWords>,
      }}
      label={`Where ${name} is wanted`}
      role="group"
      className="placecard"
    >
      {(close) => (
        <>
          <div className="cardline">
            <span>Where</span>
            <select
              className="pick"
              aria-label="At one place or over a stretch"
              value={wanted.where}
              onChange={(event) => onChange(withWhere(wanted, event.target.value as WantedForm['where']))}
            >
              <option value="at">at one place</option>
              <option value="over">over a stretch</option>
            </select>
          </div>
          {wanted.where === 'at' ? (
            <PlaceFields place={wanted.place} onChange={(next) => part({ place: next, apart: null })} />
          ) : (
            <>
              <div className="cardline">
                <span>Of</span>
                <select
                  className="pick"
                  aria-label="What is moved"
                  value={wanted.motion}
                  onChange={(event) => part({ motion: event.target.value as Motion })}
                >
                  {MOTIONS.map((motion) => (
                    <option key={motion.name} value={motion.name}>
                      {motion.label}
                    </option>
                  ))}
                </select>
              </div>
              {(
                [
                  ['from', 'From'],
                  ['to', 'To'],
                ] as const
              ).map(([field, label]) => {
                const fault = faultOfNumber(wanted[field]);
                const faultId = fault === null ? null : `stretch-${wanted.id}-${field}`;
                return (
                  <div className="cardline" key={field}>
                    <span>{label}</span>
                    <QuestionField
                      label={`Stretch ${field}, ${unit}`}
                      field={wanted[field]}
                      shown={shown}
                      faultId={faultId}
                      onChange={(next) => part({ [field]: next })}
                    />
                    {faultId !== null && (
                      <p id={faultId} className="qfault">
                        {fault}
                      </p>
                    )}
                  </div>
                );
              })}
              <div className="cardline">
                <span>Positions</span>
                <QuestionField
                  label="Positions, ends included"
                  field={wanted.steps}
                  shown={PLAIN_NUMBER}
                  faultId={null}
                  onChange={(steps) => part({ steps })}
                />
              </div>
            </>
          )}
          <label className="tick">
            <input type="checkbox" checked={wanted.isChange} onChange={(event) => part({ isChange: event.target.checked })} />
            its change from zero, not the value
          </label>
          <div className="cardend">
            <button type="button" className="button primary" onClick={close}>
              Done
            </button>
          </div>
        </>
      )}
    </Popover>
  );
};
