import { useMemo } from 'react';
import type { AxleName, CarDocument } from '../../../geometry/index';
import { useBench, useWindow } from '../../shell/benchContext';
import { callPoint, editCar } from '../../state/actions/editCar';
import { abandonTurn, beginTurn, endTurn } from '../../state/actions/editSetup';
import { benchOf } from '../../state/benchStore';
import { mmPerFileUnit } from '../../units/fileLength';
import type { FormHost } from './formHost';
import { faultOf, judgeEdit } from './judgeEdit';
import { valueAt, withKeyRenamed, withValue, type FieldPath } from './pathValue';
import { holeAt, partAt, renamePart, type Renaming } from '../renaming/renamePart';
import { renamedFrom, withPart, withValues } from '../renaming/holders';
import { followName } from '../renaming/followName';

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const OF_THEIR_OWN = /^(Add|Remove|Rename|Move|Mirror|Take) /;

/** What may touch a part calls it by its new name. */
const withTouching = (document: CarDocument, from: string, to: string): CarDocument =>
  withPart(document, 'parts', (parts) =>
    withValues(parts, (part) => withPart(part, 'touches', (touches) => touches.map(renamedFrom(from, to)))),
  );

/** Another key in its place: of a part that is named elsewhere, there too. */
const renamedKey = (document: CarDocument, path: FieldPath, to: string): Renaming => {
  const part = partAt(path);
  if (part) return renamePart(document, part, to);
  const [parent, name] = [path.slice(0, -1), String(path.at(-1))];
  const holder = valueAt(document, parent) as Readonly<Record<string, unknown>>;
  if (to === name) return { ok: true, document };
  if (Object.hasOwn(holder, to)) return { ok: false, fault: `There is a ${to} already: choose another name.` };
  const called = withValue(document, parent, withKeyRenamed(holder, name, to));
  const renamed = path[0] === 'parts' ? withTouching(called, name, to) : called;
  const fault = faultOf(judgeEdit(renamed), path);
  return fault === null ? { ok: true, document: renamed } : { ok: false, fault };
};

/** The value written; the name of a bar's hole is told to the setups that use it. */
const written = (document: CarDocument, path: FieldPath, value: unknown, typed: string | null): Renaming => {
  const hole = holeAt(path, valueAt(document, path));
  if (hole && typeof value === 'string') return renamePart(document, hole, value);
  const changed = withValue(document, path, value);
  const fault = faultOf(judgeEdit(changed), path, typed);
  return fault === null ? { ok: true, document: changed } : { ok: false, fault };
};

/**
 * The open car as a form edits it. An edit is judged by the rules of the file; one that would make a fault is refused with it
 * and does not enter the car. Every one that enters is one undo step.
 */
export const useCarForm = (axle: AxleName | null): FormHost | null => {
  const { store } = useWindow();
  const document = useBench((state) => state.history?.present.document ?? null);
  return useMemo((): FormHost | null => {
    if (!document) return null;
    return {
      document,
      axle,
      isOfCar: true,
      mm: mmPerFileUnit(document),
      read: (path) => valueAt(document, path),
      faultAt: () => null,
      write: (path, value, what, typed) => {
        const bench = benchOf(store.getState());
        if (!bench) return 'The car is no longer open.';
        const changed = written(bench.document, path, value, typed ?? null);
        if (!changed.ok) return changed.fault;
        editCar(store, OF_THEIR_OWN.test(what) ? what : `Change ${lower(what)}`, () => changed.document);
        return null;
      },
      rename: (path, to) => {
        const bench = benchOf(store.getState());
        if (!bench) return 'The car is no longer open.';
        const renamed = renamedKey(bench.document, path, to);
        if (!renamed.ok) return renamed.fault;
        const part = partAt(path);
        if (part?.part === 'point') callPoint(store, part.axle, part.name, to, renamed.document);
        else editCar(store, `Rename ${String(path.at(-1))}`, () => renamed.document);
        if (part) followName(store, part, to);
        return null;
      },
      drag: (phase) => {
        if (phase === 'begin') beginTurn(store);
        else if (phase === 'end') endTurn(store);
        else abandonTurn(store);
      },
    };
  }, [store, document, axle]);
};
