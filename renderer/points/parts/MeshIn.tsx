import { useEffect, useRef, useState, type DragEvent } from 'react';
import type { PartStl } from '../../compute/fitup/readPartStl';
import { useUnits } from '../../look/units';
import { useKept } from '../../shell/keptState';
import { useForm } from '../fields/formHost';
import { judgeEdit } from '../fields/judgeEdit';
import { withValue } from '../fields/pathValue';
import type { Draft } from '../fields/useDraft';
import { GIVEN_MESH } from './givenMesh';
import { meshShape, nameOfFile, openWords, scaleOfStl, sizeWords, type StlUnit } from './meshPart';
import { readStlFile } from './readStlFile';

interface ReadIn {
  readonly file: string;
  readonly stl: PartStl;
}

type MeshInState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly file: string }
  | { readonly kind: 'fault'; readonly file: string; readonly words: string }
  | ({ readonly kind: 'read'; readonly isTooLarge: boolean } & ReadIn);

/** A file that is chosen or dropped; the last one that was asked for counts. */
export const useStlFile = () => {
  const [state, setState] = useState<MeshInState>({ kind: 'none' });
  const asked = useRef(0);
  const take = async (file: File | undefined) => {
    if (!file) return;
    const own = (asked.current += 1);
    setState({ kind: 'reading', file: file.name });
    const read = await readStlFile(file);
    if (own !== asked.current) return;
    if (read.ok) setState({ kind: 'read', file: file.name, stl: read.value, isTooLarge: false });
    else setState({ kind: 'fault', file: file.name, words: `Found ${read.failure.found}; ${read.failure.hint}.` });
  };
  return { state, setState, take };
};

/** A button that asks for an STL file. */
export const StlButton = ({ words, onFile }: { readonly words: string; readonly onFile: (file: File | undefined) => void }) => {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="button" onClick={() => input.current?.click()}>
        {words}
      </button>
      <input
        ref={input}
        type="file"
        className="unseen"
        tabIndex={-1}
        aria-hidden="true"
        accept=".stl,model/stl,application/sla"
        onChange={(event) => {
          onFile(event.target.files?.[0]);
          event.target.value = '';
        }}
      />
    </>
  );
};

/** That a file is being read, or why it was not. */
export const StlTold = ({ state }: { readonly state: MeshInState }) => {
  if (state.kind === 'reading') return <p role="status">Reading {state.file}…</p>;
  if (state.kind !== 'fault') return null;
  return (
    <p className="leaffault" role="alert">
      {state.file} is left as it is. {state.words}
    </p>
  );
};

/** In what unit the numbers of the STL are, which it does not say. */
export const StlUnitChoice = ({ unit, onUnit }: { readonly unit: StlUnit; readonly onUnit: (unit: StlUnit) => void }) => (
  <label className="stlunit">
    its numbers are
    <select
      className="pick"
      aria-label="Unit of the STL"
      value={unit}
      onChange={(event) => onUnit(event.target.value as StlUnit)}
    >
      <option value="mm">mm</option>
      <option value="in">inches</option>
    </select>
  </label>
);

/** A part made of an STL file: read, measured, said whether it is closed, and then a part that is being made. */
export const MeshIn = ({ onDraft }: { readonly onDraft: () => void }) => {
  const host = useForm();
  const units = useUnits();
  const { state, setState, take } = useStlFile();
  const [unit, setUnit] = useKept<StlUnit>('points.parts.stlUnit', () => (host.mm === 1 ? 'mm' : 'in'));
  const [draft, setDraft] = useKept<Draft | null>('points.draft.parts', () => null);
  const [isOver, setOver] = useState(false);
  const [given, setGiven] = useKept<File | null>(GIVEN_MESH, () => null);
  useEffect(() => {
    if (given === null) return;
    setGiven(null);
    void take(given);
  });
  const drop = (event: DragEvent) => {
    const file = event.dataTransfer.files[0];
    setOver(false);
    // a car file is opened by the window
    if (!file || file.name.toLowerCase().endsWith('.json')) return;
    event.preventDefault();
    void take(file);
  };
  const make = (read: ReadIn, beside: string | null) => {
    const shape = meshShape(read.stl, scaleOfStl(unit, host.mm), beside);
    const named = nameOfFile(read.file, host.document.parts);
    const faults = judgeEdit(withValue(host.document, ['parts', named], { on: 'body', shape }));
    if (faults.some(({ code }) => code === 'meshes-too-large')) return setState({ kind: 'read', ...read, isTooLarge: true });
    // what was typed of a part that is being made stays
    setDraft((now) => ({ name: now?.name || named, value: { on: 'body', ...(now?.value as object | undefined), shape } }));
    setState({ kind: 'none' });
    onDraft();
    // under all the other parts, out of sight: it would look as if nothing had come of it
    requestAnimationFrame(() => {
      const begun = document.querySelector<HTMLElement>('.draft');
      begun?.scrollIntoView({ block: 'center' });
      begun?.querySelector<HTMLElement>('input, select')?.focus({ preventScroll: true });
    });
  };
  return (
    <section
      className={`meshin${isOver ? ' over' : ''}`}
      aria-label="Part from an STL file"
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <p className="meshask">
        <StlButton words="Part from an STL file…" onFile={(file) => void take(file)} />
        <span className="quiet">or drop one here;</span>
        <StlUnitChoice unit={unit} onUnit={setUnit} />
      </p>
      <StlTold state={state} />
      {state.kind === 'read' && (
        <>
          <MeshFacts stl={state.stl} factor={scaleOfStl(unit, 1)} file={state.file} units={units} />
          {state.isTooLarge ? (
            <>
              <p className="leaffault" role="alert">
                With the other meshes it is more than the 8 MiB that go into a car file. Beside the car file, as {state.file}, the
                command line looks at it, and this window leaves it out; with fewer triangles it goes in.
              </p>
              <button type="button" className="button" onClick={() => make(state, state.file)}>
                Leave it beside the car file
              </button>
            </>
          ) : (
            <button type="button" className="button primary" onClick={() => make(state, null)}>
              {draft ? 'Make it the shape of the part below' : 'Go on: name and carrier'}
            </button>
          )}{' '}
          <button type="button" className="button" onClick={() => setState({ kind: 'none' })}>
            Cancel
          </button>
        </>
      )}
    </section>
  );
};

interface MeshFactsProps {
  readonly stl: Pick<PartStl, 'triangles' | 'from' | 'to' | 'openEdges'>;
  /** from the STL's numbers to mm */
  readonly factor: number;
  readonly file: string;
  readonly units: ReturnType<typeof useUnits>;
}

/** How large a mesh is, where it is and whether it is closed. */
export const MeshFacts = ({ stl, factor, file, units }: MeshFactsProps) => {
  const { size, place } = sizeWords(stl, factor, units);
  const open = openWords(stl.openEdges);
  return (
    <div className="meshfacts" role="status">
      <p>
        <b>{file}</b>: {size}
        {open === null && ', closed'}
      </p>
      <p className="quiet">{place}</p>
      {open !== null && <p className="meshopen">{open}</p>}
    </div>
  );
};
