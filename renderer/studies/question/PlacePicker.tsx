import { Popover } from '../../look/controls/Popover';
import { useUnits } from '../../look/units';
import { faultOfNumber } from './fieldValue';
import { placeParts, placeWords, RIDE_HEIGHT, shownPlace, type Place } from './place';
import { QuestionField } from './QuestionField';

const LABELS = { travel: 'Bump', roll: 'Roll', rack: 'Rack' } as const;

interface PlacePickerProps {
  /** of what, for who hears it: "camber" */
  readonly of: string;
  readonly place: Place;
  readonly onChange: (place: Place) => void;
}

/** A button that says where the reading is taken, and the three fields behind it. */
export const PlacePicker = ({ of, place, onChange }: PlacePickerProps) => {
  const units = useUnits();
  const words = placeWords(place, units);
  return (
    <Popover
      button={{
        className: 'pick',
        label: `${of} at ${words}`,
        title: 'Where it is wanted',
        content: <PickWords>{words}</PickWords>,
      }}
      label={`Where ${of} is wanted`}
      role="group"
      className="placecard"
    >
      {(close) => (
        <>
          <PlaceFields place={place} onChange={onChange} />
          <div className="cardend">
            <button type="button" className="button" onClick={() => onChange(RIDE_HEIGHT)}>
              Ride height
            </button>
            <button type="button" className="button primary" onClick={close}>
              Done
            </button>
          </div>
        </>
      )}
    </Popover>
  );
};

/** The words of a button that opens a card, and its mark. */
export const PickWords = ({ children }: { readonly children: string }) => (
  <>
    <span className="pickwords">{children}</span>
    <span className="opens" aria-hidden="true" />
  </>
);

export const PlaceFields = ({ place, onChange }: Pick<PlacePickerProps, 'place' | 'onChange'>) => {
  const units = useUnits();
  return placeParts.map((part) => {
    const shown = shownPlace(part, units);
    const fault = faultOfNumber(place[part]);
    const faultId = fault === null ? null : `place-${part}-fault`;
    return (
      <div className="cardline" key={part}>
        <span>{LABELS[part]}</span>
        <QuestionField
          label={`${LABELS[part]}, ${shown.unit === '°' ? 'degrees' : shown.unit}`}
          field={place[part]}
          shown={shown}
          faultId={faultId}
          onChange={(field) => onChange({ ...place, [part]: field })}
        />
        {faultId !== null && (
          <p id={faultId} className="qfault">
            {fault}
          </p>
        )}
      </div>
    );
  });
};
