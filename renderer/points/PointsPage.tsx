import { useEffect, useMemo, useState } from 'react';
import { AdjusterCard } from '../adjusters/AdjusterCard';
import { Segments } from '../look/controls/Segments';
import { useBench, useWindow } from '../shell/benchContext';
import { askPick, layViews } from '../state/actions/viewing';
import { CoordinatesIn } from './coordinates/CoordinatesIn';
import { FieldForm, FieldsOf } from './fields/FieldForm';
import { buildFieldTree, type Field } from './fields/fieldTree';
import { FormContext } from './fields/formHost';
import type { FieldPath } from './fields/pathValue';
import { useCarForm } from './fields/useCarForm';
import { NewCar } from './newCar/NewCar';
import { PointTable } from './PointTable';
import './points.css';

type Tab = 'points' | 'axle' | 'adjusters' | 'car';
const TABS: readonly { readonly name: Tab; readonly label: string }[] = [
  { name: 'points', label: 'Points' },
  { name: 'axle', label: 'Axle' },
  { name: 'adjusters', label: 'Adjusters' },
  { name: 'car', label: 'Car' },
];

/** What the page shows beside its table: a list of coordinates being read in, or a car being made. */
type Over = 'none' | 'coordinates' | 'newCar';

/** The coordinates of the car and everything else of its file, edited by hand; lists of points in and out; a new car. */
export const PointsPage = () => {
  const { store } = useWindow();
  const axle = useBench((state) => state.axle);
  const isOpen = useBench((state) => state.history !== null);
  const [tab, setTab] = useState<Tab>('points');
  const [over, setOver] = useState<Over>('none');
  useEffect(() => {
    layViews(store, ['front', 'top']);
    return () => {
      layViews(store, []);
      askPick(store, null);
    };
  }, [store]);
  if (over === 'newCar' || !isOpen)
    return <NewCar onCancel={isOpen ? () => setOver('none') : null} onMade={(next) => setOver(next)} />;
  return (
    <>
      <section className="column pointpanel" aria-label="Car file">
        <div className="pagehead">
          <Segments label="What is edited" options={TABS} chosen={tab} onChoose={setTab} />
          <span className="spread" />
          <button
            type="button"
            className="button"
            onClick={() => setOver(over === 'coordinates' ? 'none' : 'coordinates')}
            aria-expanded={over === 'coordinates'}
          >
            Coordinates in
          </button>
          <button type="button" className="button" onClick={() => setOver('newCar')}>
            New car
          </button>
        </div>
        <Panel key={tab === 'car' ? tab : `${tab} ${axle}`} tab={tab} />
      </section>
      <div className="viewcaptions" aria-hidden="true">
        <p>
          <b>{axle === 'front' ? 'From the front' : 'From behind'}</b> Y across, Z up
        </p>
        <p>
          <b>From above</b> Y across, X forward
        </p>
      </div>
      {over === 'coordinates' && <CoordinatesIn onClose={() => setOver('none')} />}
    </>
  );
};

const without = (fields: readonly Field[], ...keys: string[]): readonly Field[] =>
  fields.filter(({ key }) => !keys.includes(key));

const Panel = ({ tab }: { readonly tab: Tab }) => {
  const axle = useBench((state) => state.axle);
  const host = useCarForm(tab === 'car' ? null : axle);
  const tree = useMemo(() => buildFieldTree(), []);
  const adjusters = tree.axle.find(({ key }) => key === 'adjusters');
  if (!host) return null;
  if (tab === 'points') return <PointTable host={host} />;
  const title = { axle: `Axle, ${axle}`, adjusters: `Adjusters, ${axle}`, car: 'Car' }[tab];
  return (
    <FormContext value={host}>
      <div className="columnhead">
        <h2>{title}</h2>
        <span className="quiet">angles in degrees; * is needed</span>
      </div>
      <div className="scroll forms" tabIndex={0} role="group" aria-label={title}>
        {tab === 'car' && <Fields fields={tree.car} path={[]} />}
        {tab === 'axle' && <Fields fields={without(tree.axle, 'adjusters')} path={[axle]} />}
        {tab === 'adjusters' && adjusters && (
          <FieldForm field={adjusters} path={[axle, 'adjusters']} above={(path) => <TryIt path={path} />} />
        )}
      </div>
    </FormContext>
  );
};

/** Single values first, in one block; then the parts that have several. */
const Fields = ({ fields, path }: { readonly fields: readonly Field[]; readonly path: FieldPath }) => (
  <>
    <div className="leaves">
      <FieldsOf fields={fields.filter(({ kind }) => kind === 'leaf')} path={path} />
    </div>
    <FieldsOf fields={fields.filter(({ kind }) => kind !== 'leaf')} path={path} />
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
