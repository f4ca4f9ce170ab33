import { AXLE_SCALES, axleValueFrom, axleValueOf } from '../compute/axleValues';
import { useBench, useWindow } from '../shell/benchContext';
import { setRideHeight, setToe } from '../state/actions/editSetup';
import { toFileLength } from '../units/fileLength';
import { AxleCard } from './AxleCard';
import { HeightPart, ToePart } from './parts/AxleParts';

const numberOr = (value: unknown): number | null => (typeof value === 'number' ? value : null);

/** What a setup asks of the axle as a whole: the toe that its adjuster is turned to, and the body's height. */
export const AxleFields = ({ dense }: { readonly dense: boolean }) => {
  const { store } = useWindow();
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  const left = useBench((state) => numberOr(state.shown?.row.left['toe']));
  const right = useBench((state) => numberOr(state.shown?.row.right['toe']));
  if (!bench) return null;
  const { document, setup } = bench;
  const toeAdjuster = document[axle]?.toeAdjuster;
  const toe = axleValueOf(document, setup, axle, 'setToe');
  const height = axleValueOf(document, setup, axle, 'rideHeight');
  const toeWords = toe === null ? 'not set: the adjuster’s own number holds' : 'the toe adjuster is turned to it';
  return (
    <>
      <AxleCard
        of="setToe"
        name="Set toe, each wheel"
        note="toe-in +"
        words={toeAdjuster === undefined ? 'no toe adjuster in the car file' : toeWords}
        group="Set toe"
        scale={AXLE_SCALES.setToe}
        value={toe}
        from={axleValueFrom(document, setup, axle, 'setToe')}
        lockedBy={toeAdjuster === undefined ? 'The car file names no toe adjuster for this axle.' : undefined}
        dense={dense}
        label="Set toe, each wheel, degrees, toe-in plus"
        unit="°"
        measures="toe"
        decimals={4}
        onSet={(value) => setToe(store, value)}
        onClear={() => setToe(store, null)}
      >
        <ToePart left={left} right={right} />
      </AxleCard>
      <AxleCard
        of="rideHeight"
        name={`Ride height, ${axle}`}
        note="over design"
        words={height === null ? 'not set: contacts where they fall' : 'body against design, up +'}
        group="Ride height"
        scale={AXLE_SCALES.rideHeight}
        value={height}
        from={axleValueFrom(document, setup, axle, 'rideHeight')}
        dense={dense}
        label={`Ride height, ${axle}, mm over design`}
        unit="mm"
        measures="length"
        decimals={3}
        onSet={(value) => setRideHeight(store, toFileLength(document, value))}
        onClear={() => setRideHeight(store, null)}
      >
        <HeightPart mm={height} />
      </AxleCard>
    </>
  );
};
