import { useMemo, useState, type ReactNode } from 'react';
import { AdjusterCard } from '../adjusters/AdjusterCard';
import { useBench } from '../shell/benchContext';
import { FieldForm, FieldsOf } from './fields/FieldForm';
import { buildFieldTree, type Field } from './fields/fieldTree';
import { FormContext, type FormHost } from './fields/formHost';
import type { FieldPath } from './fields/pathValue';
import { useCarForm } from './fields/useCarForm';
import { MeshIn } from './parts/MeshIn';
import { partsHost } from './parts/partsHost';
import { PartTools } from './parts/PartTools';
import { PointTable } from './PointTable';
import { useViewFollows } from './useViewFollows';

/** What of the car file a panel edits. */
export type PanelName = 'points' | 'axle' | 'adjusters' | 'car' | 'wheel' | 'spring' | 'limits' | 'fitUp';

/** Keys of an axle that are about what it stands on; those that are left are about how it is made. */
const STANDS_ON = ['spring', 'damper', 'antiRollBar', 'driveShaft', 'sections', 'strutTube', 'heightAt', 'travel'];
const RODS = ['rods', 'trailingArm'];
const ADJUSTED = ['adjusters', 'toeAdjuster'];
const JUDGED = ['onCar', 'limits', 'tolerances', 'margins'];

type Choice = (key: string) => boolean;
const among =
  (keys: readonly string[]): Choice =>
  (key) =>
    keys.includes(key);
const besides =
  (keys: readonly string[]): Choice =>
  (key) =>
    !keys.includes(key);
const NONE: Choice = () => false;

/** The fields of the axle and of the car in each panel; between them the panels of the steps have all, and so have the others. */
export const PANELS: Readonly<Record<Exclude<PanelName, 'points' | 'fitUp'>, { readonly axle: Choice; readonly car: Choice }>> = {
  axle: { axle: besides(['adjusters']), car: NONE },
  adjusters: { axle: among(ADJUSTED), car: NONE },
  car: { axle: NONE, car: () => true },
  wheel: { axle: besides([...STANDS_ON, ...ADJUSTED]), car: besides(JUDGED) },
  spring: { axle: among(STANDS_ON), car: NONE },
  limits: { axle: NONE, car: among(JUDGED) },
};

const TITLES: Readonly<Record<Exclude<PanelName, 'points' | 'fitUp'>, string>> = {
  axle: 'Axle',
  adjusters: 'Adjusters',
  car: 'Car',
  wheel: 'Wheel and body',
  spring: 'Spring, damper, bar',
  limits: 'Limits',
};

/** One panel of the page: the table of points, or a form of some of the car's fields. */
export const CarPanel = ({ panel }: { readonly panel: PanelName }) => {
  const axle = useBench((state) => state.axle);
  const ofAxle = useCarForm(axle);
  if (!ofAxle) return null;
  if (panel === 'fitUp') return <FitUpFields />;
  return panel === 'points' ? <PointTable host={ofAxle} /> : <FieldsPanel panel={panel} ofAxle={ofAxle} />;
};

/** Solids, joints and hoses: what the page of fit-up looks at, of both axles. */
const FitUpFields = () => {
  const host = useCarForm(null);
  const tree = useMemo(() => buildFieldTree(), []);
  useViewFollows('left');
  // the part that is being made is kept beside the fields that show it
  const [, drawAnew] = useState(0);
  if (!host) return null;
  return (
    <>
      <div className="columnhead">
        <h2>Parts, joints, hoses</h2>
        <span className="quiet">places at design, left side; * is needed</span>
      </div>
      <div className="scroll forms" tabIndex={0} role="group" aria-label="Parts, joints, hoses">
        <FormContext value={partsHost(host)}>
          <MeshIn onDraft={() => drawAnew((count) => count + 1)} />
          <Fields fields={tree.fitUp} path={[]} />
        </FormContext>
      </div>
    </>
  );
};

interface FieldsPanelProps {
  readonly panel: Exclude<PanelName, 'points' | 'fitUp'>;
  readonly ofAxle: FormHost;
}

/** A form of some fields of the axle and of the car. What it asks for in the view is on the left. */
const FieldsPanel = ({ panel, ofAxle }: FieldsPanelProps) => {
  const axle = useBench((state) => state.axle);
  const ofCar = useCarForm(null);
  const tree = useMemo(() => buildFieldTree(), []);
  useViewFollows('left');
  if (!ofCar) return null;
  const shown = PANELS[panel];
  // a strut has no rods to list; another layout is a step of its own there
  const isStrut = panel === 'wheel' && ofAxle.document[axle]?.layout === 'strut';
  const ofPanel = tree.axle.filter(({ key }) => shown.axle(key) && !(isStrut && RODS.includes(key)));
  // what the right side has of its own comes after what both sides have
  const axleFields = [...ofPanel.filter(({ key }) => key !== 'right'), ...ofPanel.filter(({ key }) => key === 'right')];
  const carFields = tree.car.filter(({ key }) => shown.car(key));
  const title = axleFields.length > 0 ? `${TITLES[panel]}, ${axle}` : TITLES[panel];
  return (
    <>
      <div className="columnhead">
        <h2>{title}</h2>
        <span className="quiet">angles in degrees; * is needed</span>
      </div>
      <div className="scroll forms" tabIndex={0} role="group" aria-label={title}>
        <FormContext value={ofAxle}>
          <Fields fields={axleFields} path={[axle]} />
        </FormContext>
        <FormContext value={ofCar}>
          {axleFields.length > 0 && carFields.length > 0 && <h3 className="formhead">The car</h3>}
          <Fields fields={carFields} path={[]} />
        </FormContext>
      </div>
    </>
  );
};

/** Single values first, in one block; then the parts that have several. */
const Fields = ({ fields, path }: { readonly fields: readonly Field[]; readonly path: FieldPath }) => (
  <>
    <div className="leaves">
      <FieldsOf fields={fields.filter(({ kind }) => kind === 'leaf')} path={path} />
    </div>
    {fields
      .filter(({ kind }) => kind !== 'leaf')
      .map((field) => (
        <FieldForm
          key={field.key}
          field={field}
          path={[...path, field.key]}
          {...(ABOVE[field.key] ? { above: ABOVE[field.key] } : {})}
        />
      ))}
  </>
);

/** The adjuster as a part: turned here, the view and the bench follow. */
const TryIt = ({ path }: { readonly path: FieldPath }) => {
  const axle = useBench((state) => state.axle);
  const name = String(path.at(-1));
  const adjuster = useBench((state) => state.history?.present.document[axle]?.adjusters?.[name]);
  if (!adjuster) return null;
  return (
    <div className="tryit">
      <AdjusterCard name={name} adjuster={adjuster} dense />
    </div>
  );
};

/** What stands over the fields of a part that the person named. */
const ABOVE: Readonly<Record<string, (path: FieldPath) => ReactNode>> = {
  adjusters: (path) => <TryIt path={path} />,
  parts: (path) => <PartTools path={path} />,
};
