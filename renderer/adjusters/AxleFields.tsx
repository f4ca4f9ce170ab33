import { NumberField } from '../look/controls/NumberField';
import { useBench, useWindow } from '../shell/benchContext';
import { setRideHeight, setToe } from '../state/actions/editSetup';
import { setupNamed } from '../state/settings';
import { mmPerFileUnit, toFileLength } from '../units/fileLength';

/** Toe is set in hundredths of a degree, heights in millimetres: what a mechanic sets them to. */
const TOE_STEP = 0.01;
const TOE_RANGE = 5;
const HEIGHT_STEP = 1;
const HEIGHT_RANGE = 200;

const stepped = (value: number | null, steps: number, step: number): number => Number(((value ?? 0) + steps * step).toFixed(6));

/** What a setup asks of the axle as a whole: the toe that its adjuster is turned to, and the body's height. */
export const AxleFields = () => {
  const { store } = useWindow();
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  if (!bench) return null;
  const entries = setupNamed(bench.document, bench.setup)[axle];
  const toeAdjuster = bench.document[axle]?.toeAdjuster;
  const toe = entries?.setToe ?? null;
  const mm = mmPerFileUnit(bench.document);
  const height = entries?.rideHeight === undefined ? null : entries.rideHeight * mm;
  const putHeight = (value: number) => setRideHeight(store, toFileLength(bench.document, value));
  return (
    <div className="axlefields">
      <div className="card plain" role="group" aria-label="Toe of the axle">
        <span className="cardtext">
          <span className="cardname">Set toe, each wheel</span>
          <span className="cardwords">
            {toeAdjuster === undefined
              ? 'no toe adjuster in the car file'
              : toe === null
                ? 'not set: the adjuster’s own number holds'
                : 'toe-in +'}
          </span>
        </span>
        <NumberField
          label="Set toe, each wheel, degrees, toe-in plus"
          value={toe}
          absent="none"
          unit="°"
          measures="toe"
          min={-TOE_RANGE}
          max={TOE_RANGE}
          decimals={4}
          lockedBy={toeAdjuster === undefined ? 'The car file names no toe adjuster for this axle.' : undefined}
          className={toeAdjuster === undefined ? 'locked' : ''}
          onSet={(value) => setToe(store, value)}
          onClear={() => setToe(store, null)}
          onStep={(steps) => setToe(store, stepped(toe, steps, TOE_STEP))}
          onHome={() => setToe(store, 0)}
        />
      </div>
      <div className="card plain" role="group" aria-label="Ride height of the axle">
        <span className="cardtext">
          <span className="cardname">Ride height, {axle}</span>
          <span className="cardwords">{height === null ? 'not set: contacts where they fall' : 'body against design, up +'}</span>
        </span>
        <NumberField
          label={`Ride height, ${axle}, mm over design`}
          value={height}
          absent="none"
          unit="mm"
          measures="length"
          min={-HEIGHT_RANGE}
          max={HEIGHT_RANGE}
          onSet={putHeight}
          onClear={() => setRideHeight(store, null)}
          onStep={(steps) => putHeight(stepped(height, steps, HEIGHT_STEP))}
          onHome={() => putHeight(0)}
        />
      </div>
    </div>
  );
};
