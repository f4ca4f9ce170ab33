import { useMemo } from 'react';
import { correctForFloor, toDegrees, toRadians, type FloorCorrection } from '../../../geometry/index';
import { KeepTable } from '../../lengths/KeepTable';
import { useUnits } from '../../look/units';
import { formatSigned } from '../../units/format';
import { shownQuantity, withUnit } from '../../units/shownQuantity';
import { faultOfNumber, type FieldValue } from '../question/fieldValue';
import { QuestionField } from '../question/QuestionField';
import { WHEEL_WORDS, WHEELS, type GaugeForm, type WheelFields, type WheelName } from './gaugeForm';

interface FloorGaugeProps {
  readonly form: GaugeForm;
  /** of the car where it stands [mm] */
  readonly size: { readonly frontTrack: number; readonly rearTrack: number; readonly wheelbase: number } | null;
  /** cambers of the model where it stands [degrees] */
  readonly model: Readonly<Record<WheelName, number | null>>;
  readonly onChange: (form: GaugeForm) => void;
}

const isBlank = ({ value, typed }: FieldValue): boolean => value === null && (typed === null || typed.trim() === '');

/** Heights of the four pads in, corrected cambers out. */
export const FloorGauge = ({ form, size, model, onChange }: FloorGaugeProps) => {
  const units = useUnits();
  const length = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const angle = shownQuantity({ quantity: 'angle', decimals: 2 }, units);
  const corrected = useMemo(() => correctionOf(form, size), [form, size]);
  if (size === null)
    return <p className="empty">A floor is judged by four wheels: this car has one axle, or cannot stand in this setup.</p>;
  const set = (of: 'pads' | 'cambers', wheel: WheelName, field: FieldValue) =>
    onChange({ ...form, [of]: { ...form[of], [wheel]: field } });
  const write = (value: number | null): string => (value === null ? '–' : angle.format(value));
  const shift = (wheel: WheelName): number | null => {
    const measured = form.cambers[wheel].value;
    const after = corrected?.cambers[wheel] ?? null;
    return measured === null || after === null ? null : toDegrees(after) - measured;
  };
  return (
    <section className="answers gaugetable" aria-label="Camber on a floor that is not level">
      <div className="answershead">
        <h2>Corrected camber</h2>
        <span className="spread" />
        <KeepTable
          name="cambers corrected for the floor"
          table={() => ({
            heads: ['wheel', `pad [${length.unit}]`, 'camber measured [°]', 'camber corrected [°]', 'camber of the model [°]'],
            rows: WHEELS.map((wheel) => {
              const after = corrected?.cambers[wheel] ?? null;
              const pad = form.pads[wheel].value;
              return [
                WHEEL_WORDS[wheel],
                pad === null ? null : length.toShown(pad),
                form.cambers[wheel].value,
                after === null ? null : toDegrees(after),
                model[wheel],
              ];
            }),
          })}
        />
      </div>
      <div className="answertable" tabIndex={0} role="region" aria-label="Table of the floor">
        <table>
          <thead>
            <tr>
              <th scope="col">Wheel</th>
              <th scope="col">Height of its pad</th>
              <th scope="col">Camber as the gauge shows it</th>
              <th scope="col" className="number">
                Camber against the floor
              </th>
              <th scope="col" className="number">
                Floor’s part
              </th>
              <th scope="col" className="number">
                The model here
              </th>
            </tr>
          </thead>
          <tbody>
            {WHEELS.map((wheel) => {
              const after = corrected?.cambers[wheel] ?? null;
              const part = shift(wheel);
              return (
                <tr key={wheel}>
                  <th scope="row">{WHEEL_WORDS[wheel]}</th>
                  <td>
                    <FloorField
                      wheel={wheel}
                      what="Pad"
                      of={form.pads}
                      shown={length}
                      isNeeded
                      onSet={(field) => set('pads', wheel, field)}
                    />
                  </td>
                  <td>
                    <FloorField
                      wheel={wheel}
                      what="Camber"
                      of={form.cambers}
                      shown={angle}
                      isNeeded={false}
                      onSet={(field) => set('cambers', wheel, field)}
                    />
                  </td>
                  <td className="number">
                    <b>{after === null ? '–' : write(toDegrees(after))}</b>
                  </td>
                  <td className="number">{part === null ? '–' : formatSigned(part, 3)}</td>
                  <td className="number">{write(model[wheel])}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
        {corrected && (
          <ul className="gaugewords">
            <li>
              Under the front axle the floor leans {write(Math.abs(toDegrees(corrected.tilt.front)))}°, under the rear{' '}
              {write(Math.abs(toDegrees(corrected.tilt.rear)))}°; along the car {write(Math.abs(toDegrees(corrected.slope)))}°.
            </li>
            <li>
              One pad is {withUnit(length.format(Math.abs(corrected.twist)), length.unit)} out of the plane of the other three.
              What that makes the wheels move on their springs, about a quarter of it each, is not in the corrected cambers.
            </li>
            <li>Only differences of the pads count. Each axle is held against the line through its own two pads.</li>
          </ul>
        )}
      </div>
    </section>
  );
};

const correctionOf = (form: GaugeForm, size: FloorGaugeProps['size']): FloorCorrection | null => {
  if (size === null || WHEELS.some((wheel) => form.pads[wheel].value === null)) return null;
  const values = <Value,>(of: (wheel: WheelName) => Value) => ({
    frontLeft: of('frontLeft'),
    frontRight: of('frontRight'),
    rearLeft: of('rearLeft'),
    rearRight: of('rearRight'),
  });
  return correctForFloor(
    { ...size, pads: values((wheel) => form.pads[wheel].value ?? 0) },
    values((wheel) => {
      const camber = form.cambers[wheel].value;
      return camber === null ? null : toRadians(camber);
    }),
  );
};

interface FloorFieldProps {
  readonly wheel: WheelName;
  readonly what: string;
  readonly of: WheelFields;
  readonly shown: ReturnType<typeof shownQuantity>;
  readonly isNeeded: boolean;
  readonly onSet: (field: FieldValue) => void;
}

const FloorField = ({ wheel, what, of, shown, isNeeded, onSet }: FloorFieldProps) => {
  const field = of[wheel];
  const fault = !isNeeded && isBlank(field) ? null : faultOfNumber(field);
  const faultId = fault === null ? null : `floor-${what}-${wheel}`;
  return (
    <>
      <QuestionField
        label={`${what}, ${WHEEL_WORDS[wheel]}, ${shown.unit === 'mm' || shown.unit === 'in' ? shown.unit : 'degrees'}`}
        field={field}
        shown={shown}
        faultId={faultId}
        onChange={onSet}
      />
      {faultId !== null && (
        <p id={faultId} className="qfault">
          {fault}
        </p>
      )}
    </>
  );
};
