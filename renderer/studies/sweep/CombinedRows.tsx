import { useUnits } from '../../look/units';
import { QuestionField } from '../question/QuestionField';
import { faultOfNumber } from '../question/fieldValue';
import { placeParts, shownPlace, RIDE_HEIGHT, type Place } from '../question/place';

interface CombinedRowsProps {
  readonly rows: readonly Place[];
  readonly onChange: (rows: readonly Place[]) => void;
}

const LABELS = { travel: 'Heave', roll: 'Roll', rack: 'Rack' } as const;

/** Positions of heave, roll and steer together, row by row. */
export const CombinedRows = ({ rows, onChange }: CombinedRowsProps) => {
  const units = useUnits();
  return (
    <section className="combined" aria-label="Positions">
      <table>
        <thead>
          <tr>
            <th scope="col">Row</th>
            {placeParts.map((part) => (
              <th key={part} scope="col">
                {LABELS[part]} <span className="unit">{shownPlace(part, units).unit || '°'}</span>
              </th>
            ))}
            <th scope="col">
              <span className="unseen">Take out</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={index}>
              <th scope="row">{index + 1}</th>
              {placeParts.map((part) => {
                const fault = faultOfNumber(row[part]);
                const faultId = fault === null ? null : `combined-${index}-${part}`;
                return (
                  <td key={part}>
                    <QuestionField
                      label={`${LABELS[part]} of row ${index + 1}`}
                      field={row[part]}
                      shown={shownPlace(part, units)}
                      faultId={faultId}
                      onChange={(field) => onChange(rows.map((one, at) => (at === index ? { ...one, [part]: field } : one)))}
                    />
                    {faultId !== null && (
                      <p id={faultId} className="qfault">
                        {fault}
                      </p>
                    )}
                  </td>
                );
              })}
              <td>
                <button
                  type="button"
                  className="button takeout"
                  aria-label={`Take out row ${index + 1}`}
                  disabled={rows.length === 1}
                  onClick={() => onChange(rows.filter((_, at) => at !== index))}
                >
                  ×
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <button type="button" className="button" onClick={() => onChange([...rows, rows.at(-1) ?? RIDE_HEIGHT])}>
        One more row
      </button>
    </section>
  );
};
