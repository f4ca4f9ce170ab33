import { useMemo } from 'react';
import type { AxleName, CarDocument } from '../../../geometry/index';
import { motionRanges } from '../../compute/motionRanges';
import { standingRow } from '../../compute/standing';
import { useBench } from '../../shell/benchContext';
import { formatNumber } from '../../units/format';
import { FailureBanner } from '../answers/FailureBanner';
import { KeptQuestions } from '../kept/KeptQuestions';
import { useQuestionPage } from '../kept/useQuestionPage';
import { timeTaken, useTellRun } from '../lastRun';
import { RunProgress } from '../RunProgress';
import { OfBefore } from '../answers/OfBefore';
import { useFollowed } from '../useFollowed';
import { mapFaults, mapFormFor, mapForms, mapOrder } from './mapForm';
import { MapSentence } from './MapSentence';
import { MapView } from './MapView';
import './map.css';

/** One reading over two parts, or over a part and a motion: what is possible. */
export const MapStudy = () => {
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  return bench && <MapOf document={bench.document} setup={bench.setup} axle={axle} />;
};

interface MapProps {
  readonly document: CarDocument;
  readonly setup: string;
  readonly axle: AxleName;
}

const MapOf = ({ document, setup, axle }: MapProps) => {
  const tellRun = useTellRun();
  const forms = useMemo(() => mapForms(document, axle), [document, axle]);
  const page = useQuestionPage(document, axle, forms);
  const form = useMemo(() => mapFormFor(page.form, document, axle), [page.form, document, axle]);
  const ranges = useMemo(() => motionRanges(document, axle, standingRow({ document, setup }, axle)), [document, setup, axle]);
  const { reading, wheel, x, y, side, second, place, toe } = form;
  const order = useMemo(
    () => mapOrder({ reading, wheel, x, y, side, second, place, toe }, document, setup, axle, ranges),
    [reading, wheel, x, y, side, second, place, toe, document, setup, axle, ranges],
  );
  const { state, last, cancel, again } = useFollowed('map', order, ({ answer, took }) => {
    const steps = (answer.onSteps?.x.length ?? 0) * (answer.onSteps?.y.length ?? 0);
    tellRun([
      ...(steps > 0 ? [`${formatNumber(steps, 0)} real settings tried,`] : []),
      `${formatNumber(answer.x.length * answer.y.length, 0)} solves behind`,
      timeTaken(took),
    ]);
  });
  const faults = mapFaults(form, document, axle);
  const hasParts = Object.keys(document[axle]?.adjusters ?? {}).length > 0;
  return (
    <div className="mapstudy">
      <KeptQuestions document={document} page={page} />
      <MapSentence
        form={form}
        document={document}
        setup={setup}
        axle={axle}
        faults={faults}
        isRunning={state.kind === 'running'}
        onChange={page.change}
        onDraw={again}
      />
      <RunProgress state={state} onCancel={cancel} />
      {state.kind === 'failed' && <FailureBanner failure={state.failure} />}
      {!hasParts && <p className="empty">The {axle} axle has no adjusters in this car file, so there is nothing to draw over.</p>}
      {hasParts && last && order === null && <OfBefore />}
      {hasParts && last && (
        <MapView
          isBefore={order === null}
          order={last.order}
          answer={last.answer}
          form={form}
          faults={faults}
          document={document}
          setup={setup}
          axle={axle}
        />
      )}
    </div>
  );
};
