import { useEffect, useMemo, useRef, useState } from 'react';
import { designPoint, pointsCsv, withRightPoints, type SideName, type Triple } from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';
import { Segments } from '../look/controls/Segments';
import { VerdictShape } from '../look/controls/VerdictShape';
import { saveFile } from '../look/saveFile';
import { useBench, useWindow } from '../shell/benchContext';
import { choosePoint } from '../state/actions/viewing';
import { keptName } from '../state/carTitle';
import { useUnits } from '../look/units';
import { useKept } from '../shell/keptState';
import { shownQuantity } from '../units/shownQuantity';
import { useFieldUnit } from '../look/controls/useFieldUnit';
import { ChosenPoint } from './ChosenPoint';
import { columnPlaces } from './columnPlaces';
import { DraftPart } from './fields/DraftPart';
import type { Field } from './fields/fieldTree';
import { FormContext, type FormHost } from './fields/formHost';
import { beginDraft, type Draft } from './fields/useDraft';
import { isTypical } from './newCar/newCarSteps';
import { placedFor } from './placedFor';
import { PointCell } from './PointCell';
import { FarNotice } from './FarNotice';
import { farLimit, linesBesideSaved } from './farMoved';
import { apartWords, pointsAsText, type PointLine } from './pointRows';
import { useViewFollows } from './useViewFollows';

const SIDES = [
  { name: 'left', label: 'Left' },
  { name: 'right', label: 'Right' },
] as const;
const AXES = ['X fwd', 'Y left', 'Z up'] as const;

const POINT: Field = {
  kind: 'leaf',
  key: '',
  required: true,
  input: { kind: 'numbers', count: 3 },
  words: { label: 'Point', unit: 'length', meaning: '' },
  meaning: 'X forward, Y left, Z up, left side.',
};

/** Every point of the axle on the bench: where it is, what it joins, what moves it; changed in its cell. */
export const PointTable = ({ host }: { readonly host: FormHost }) => {
  const units = useUnits();
  const length = shownQuantity({ quantity: 'length', decimals: 2 }, units);
  const { format } = useFieldUnit('length', 'mm', 2);
  const { store } = useWindow();
  const name = useBench((state) => state.axle);
  const file = useBench((state) => state.file);
  const history = useBench((state) => state.history);
  const begun = file?.begun;
  const chosen = useBench((state) => state.viewing.chosen);
  const [side, setSide] = useState<SideName>('left');
  const [seen, setSeen] = useState(chosen);
  const table = useRef<HTMLTableElement>(null);
  const [draft, setDraft] = useKept<Draft | null>(`points.draft.${name}.points`, () => null);
  const [refused, setRefused] = useState<string | null>(null);
  const axle = host.document[name];
  // a point that was chosen in a picture is of the side that it was clicked on
  if (chosen !== seen) {
    setSeen(chosen);
    if (chosen?.axle === name && chosen.side !== side) setSide(chosen.side);
  }
  useEffect(() => {
    if (chosen?.axle === name) table.current?.querySelector('tr.chosen')?.scrollIntoView({ block: 'nearest' });
  }, [chosen, name]);
  const lines = useMemo(() => linesBesideSaved({ history, file }, name, side), [history, file, name, side]);
  const follow = useViewFollows(side);
  if (!axle) return null;
  const { mm } = host;
  const places = AXES.map((_, index) => columnPlaces(lines.map(({ at }) => format((at[index] ?? 0) * mm))));
  const picked = lines.find((line) => chosen?.axle === name && chosen.point === line.name) ?? null;

  const limit = farLimit({ file }).mm;
  const isFar = ({ moved }: PointLine): boolean => moved !== null && moved * mm > limit;
  const move = (line: PointLine, index: number, to: number): string | null => {
    const at = line.at.map((old, i) => (i === index ? Number((to / mm).toFixed(9)) : old)) as unknown as Triple;
    const holder = side === 'left' ? [name, 'points'] : [name, 'right', 'points'];
    return host.write(
      [...holder, line.name],
      at,
      `Move ${nameOfKey(line.name).toLowerCase()}${side === 'right' ? ', right' : ''}`,
    );
  };
  const mirrorAgain = (point: string): void => {
    const { [point]: _own, ...others } = axle.right?.points ?? {};
    setRefused(host.write([name], withRightPoints(axle, others), `Mirror ${nameOfKey(point).toLowerCase()}`));
  };
  const makeOwn = (point: string): void => {
    const at = designPoint(axle, 'right', point, 1);
    if (at) setRefused(host.write([name, 'right', 'points', point], at, `Move ${nameOfKey(point).toLowerCase()}, right`));
  };
  const copy = () => void navigator.clipboard?.writeText(pointsAsText(lines, mm, units.length));
  const save = () => {
    const state = store.getState();
    saveFile(`${keptName(state, 'points')}.csv`, new Blob([pointsCsv(placedFor(state), units.length)], { type: 'text/csv' }));
  };

  return (
    <>
      <div className="columnhead">
        <h2>
          Points, {name}, {side} side
        </h2>
        <span className="quiet">car frame, {units.length}</span>
        <span className="spread" />
        <Segments label="Side" options={SIDES} chosen={side} onChoose={setSide} />
        <button type="button" className="button" onClick={copy} title="Copies the table as tab-separated text">
          Copy
        </button>
        <button
          type="button"
          className="button"
          onClick={save}
          title={`The points in this setup and position, beside design; in ${units.length}`}
        >
          CSV
        </button>
      </div>
      <FarNotice axle={name} side={side} />
      <div className="scroll pointscroll" tabIndex={0} role="group" aria-label="Table of points">
        <table ref={table} className="pointtable">
          <thead>
            <tr>
              <th scope="col">Point</th>
              {AXES.map((axis) => (
                <th key={axis} scope="col" className="number">
                  {axis}
                </th>
              ))}
              <th scope="col" className="number">
                {begun ? 'Moved' : 'From saved'}
              </th>
              <th scope="col">Right</th>
              <th scope="col">Adjuster</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => {
              const isChosen = chosen?.axle === name && chosen.point === line.name;
              const mirrored = side === 'right' && !line.own;
              return (
                <tr
                  key={line.name}
                  className={isChosen ? 'chosen' : undefined}
                  onFocus={() => {
                    follow();
                    if (!isChosen) choosePoint(store, { axle: name, side, point: line.name });
                  }}
                >
                  <th scope="row">
                    <button type="button" onClick={() => choosePoint(store, { axle: name, side, point: line.name })}>
                      <b>{line.name}</b>
                      <span>{line.role}</span>
                    </button>
                  </th>
                  {AXES.map((axis, index) => (
                    <td key={axis}>
                      <PointCell
                        label={`${line.name}, ${axis}, ${side}`}
                        value={(line.at[index] ?? 0) * mm}
                        places={places[index] ?? 0}
                        mirrored={mirrored}
                        onSet={(to) => move(line, index, to)}
                      />
                    </td>
                  ))}
                  <td className={`number ${isFar(line) ? 'far' : 'quiet'}`}>
                    {isFar(line) && <VerdictShape verdict="close" />}
                    {isTypical(begun, host.document, name, line.name)
                      ? 'typical'
                      : line.moved === null
                        ? 'new'
                        : line.moved > 0
                          ? length.format(line.moved * mm)
                          : ''}
                  </td>
                  <td className={`rightcell${line.own ? ' own' : ''}`}>
                    {line.apart === null ? (
                      side === 'right' ? (
                        <button
                          type="button"
                          className="button plain"
                          aria-label={`${line.name}: right side of its own`}
                          title="Gives the right side a point of its own, where the mirror image is now"
                          onClick={() => makeOwn(line.name)}
                        >
                          make own
                        </button>
                      ) : (
                        <span className="quiet">mirror</span>
                      )
                    ) : (
                      <>
                        <span title="A right side of its own, less the mirror image of the left: X, Y outboard, Z">
                          {apartWords(line.apart.map((v) => v * mm) as unknown as Triple, length)}
                        </span>
                        {side === 'right' && (
                          <button
                            type="button"
                            className="button plain"
                            aria-label={`${line.name}: right side the mirror image again`}
                            title="The right side is the mirror image again"
                            onClick={() => mirrorAgain(line.name)}
                          >
                            mirror
                          </button>
                        )}
                      </>
                    )}
                  </td>
                  <td className="quiet movers">{line.adjusters.join(', ')}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
        <div className="pointadd">
          {refused !== null && (
            <p className="leaffault" role="alert">
              {refused}
            </p>
          )}
          {picked !== null && draft === null && <ChosenPoint host={host} line={picked} axle={name} onRefused={setRefused} />}
          {draft ? (
            <FormContext value={host}>
              <DraftPart field={POINT} path={[name, 'points', '']} draft={draft} onDraft={setDraft} />
            </FormContext>
          ) : (
            <button type="button" className="button" onClick={() => setDraft(beginDraft(POINT))}>
              Add a point
            </button>
          )}
        </div>
      </div>
    </>
  );
};
