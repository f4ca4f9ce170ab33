import { useState } from 'react';
import type { Fault } from '../../../geometry/index';
import { useWindow } from '../../shell/benchContext';
import { beginGivenCar, keepUnfinished } from '../../state/actions/beginCar';
import type { UnfinishedCar } from '../../state/begunCar';
import { changeFiles, isUnsaved } from '../../state/benchStore';
import { faultWords, judgeEdit } from '../fields/judgeEdit';
import { GivenAxleTable } from './GivenAxleTable';
import { countGiven, documentOfGiven, missingOf } from './unfinishedCar';

interface UnfinishedPointsProps {
  readonly car: UnfinishedCar;
  readonly onLayout: () => void;
  /** null: no car is open to go back to */
  readonly onLater: (() => void) | null;
  readonly onMade: () => void;
}

/** The points of a new car, all of them empty until they are given. It becomes a car when none is missing. */
export const UnfinishedPoints = ({ car, onLayout, onLater, onMade }: UnfinishedPointsProps) => {
  const { store } = useWindow();
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  /** it was to be opened while something was missing */
  const [isEarly, setEarly] = useState(false);
  const missing = missingOf(car);
  const { given, of } = countGiven(car);
  const keep = (next: UnfinishedCar) => {
    setFaults([]);
    setEarly(false);
    keepUnfinished(store, next);
  };
  const open = () => {
    const document = documentOfGiven(car);
    const found = judgeEdit(document);
    // what is missing stands in the list already, in words of this page
    setFaults(missing.length > 0 ? [] : found);
    setEarly(missing.length > 0);
    if (found.length > 0 || missing.length > 0) {
      window.document.querySelector<HTMLElement>('.newcar [data-given="not yet"]')?.focus();
      return;
    }
    const put = () => {
      if (beginGivenCar(store, car.choice, document)) onMade();
    };
    if (isUnsaved(store.getState())) changeFiles(store, { question: { title: car.choice.name, open: put } });
    else put();
  };
  return (
    <section className="newcar" aria-label="Points of the new car">
      <div className="givenaxles" tabIndex={0} role="group" aria-label="Tables of points">
        {(['front', 'rear'] as const).map((axle) => {
          const [layout, part] = [car.choice[axle], car[axle]];
          return layout === null || !part ? null : (
            <GivenAxleTable
              key={axle}
              axle={axle}
              layout={layout}
              given={part}
              onGive={(next) => keep({ ...car, [axle]: next })}
            />
          );
        })}
      </div>
      <aside className="newside" aria-label="What is missing">
        <div className="newscroll" tabIndex={0} role="group" aria-label="List of what is missing">
          <h2>{car.choice.name}</h2>
          <p role="status">
            <b>
              {given} of {of} points given
            </b>
            {missing.length > 0 ? `, ${missing.length} things missing` : ', nothing is missing'}
          </p>
          <p className="quiet">
            No number stands here that you did not give. The right side is the mirror image until it is typed; the rack, and the
            pivot of a trailing arm, lie across the car until told otherwise.
          </p>
          {missing.length > 0 && (
            <>
              <h2>Not given yet</h2>
              <p>{missing.join(', ')}</p>
            </>
          )}
          {isEarly && (
            <p className="leaffault" role="alert">
              <b>It is no car yet:</b> {missing.length === 1 ? '1 thing is' : `${missing.length} things are`} missing, listed
              above. The cursor is at the first.
            </p>
          )}
          {faults.length > 0 && (
            <div className="leaffault" role="alert">
              <p>
                <b>It is no car yet.</b> What the file would be faulted for:
              </p>
              {faults.map((fault, index) => (
                <p key={index}>{faultWords(fault, [])}</p>
              ))}
            </div>
          )}
          <p className="quiet">
            What you give is kept on this machine as you give it, also if the window or the program ends, and in no car file
            before the car is opened: nothing half measured looks like a car.
          </p>
        </div>
        <div className="newend">
          <button type="button" className="button" data-press="new-car" onClick={onLayout}>
            Back: layout
          </button>
          {onLater && (
            <button type="button" className="button" onClick={onLater}>
              Later
            </button>
          )}
          <span className="spread" />
          <button type="button" className="button primary" onClick={open}>
            Open the car
          </button>
        </div>
      </aside>
    </section>
  );
};
