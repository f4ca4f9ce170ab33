import { useEffect, useState } from 'react';
import type { PartStl } from '../../compute/fitup/readPartStl';
import { useUnits } from '../../look/units';
import { useForm } from '../fields/formHost';
import type { FieldPath } from '../fields/pathValue';
import { MeshFacts, StlButton, StlTold, StlUnitChoice, useStlFile } from './MeshIn';
import { boxOf, meshShape, scaleOfStl, type StlUnit } from './meshPart';
import { asKind, CHANGEABLE, copiedName, extentOf, withCopiedPart, type Extent, type Shape, type ShapeKind } from './partEdits';
import { readStlFile } from './readStlFile';

type MeshShape = Extract<Shape, { readonly kind: 'mesh' }>;

/** What a mesh in the car file holds, once it is read; null meanwhile, where it is beside it, and where it cannot be read. */
const useMesh = (shape: Shape | undefined): PartStl | null => {
  const data = shape?.kind === 'mesh' ? shape.data : undefined;
  const [read, setRead] = useState<{ readonly of: string; readonly stl: PartStl } | null>(null);
  useEffect(() => {
    if (data === undefined) return;
    let ended = false;
    const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
    void readStlFile(new File([bytes], 'mesh.stl')).then((result) => {
      if (!ended && result.ok) setRead({ of: data, stl: result.value });
    });
    return () => {
      ended = true;
    };
  }, [data]);
  return read !== null && read.of === data ? read.stl : null;
};

/** What is done to a part as a whole: another shape where it stands, a copy, another mesh. */
export const PartTools = ({ path }: { readonly path: FieldPath }) => {
  const host = useForm();
  const [refused, setRefused] = useState<string | null>(null);
  const name = String(path.at(-1));
  const { parts } = host.document;
  const part = parts?.[name];
  const mesh = useMesh(part?.shape);
  if (!part || !parts) return null;
  const { shape } = part;
  const wheel = host.document[part.axle ?? (host.document.front ? 'front' : 'rear')];
  const centre = wheel?.points['wheelCentre'];
  /** A tyre and a rim have no numbers of their own: they are as large as the wheel, and where it is. */
  const ofWheel = (): Extent | null => {
    const radius = wheel?.wheel.tyreRadius ?? wheel?.wheel.loadedRadius;
    const width = wheel?.wheel.tyreWidth ?? wheel?.wheel.rimWidth;
    if (!centre || radius === undefined) return null;
    const across = 2 * radius;
    return { centre, axes: [[0, 1, 0], [0, 0, 1]], size: [width ?? radius, across, across] }; // prettier-ignore
  };
  const change = (kind: ShapeKind) => {
    const extent = extentOf(shape, mesh === null ? null : boxOf(mesh)) ?? (shape.kind === 'mesh' ? null : ofWheel());
    if (extent === null)
      return setRefused(`The ${shape.kind} cannot be measured here, so no other shape can take its place: make a new part.`);
    setRefused(host.write([...path, 'shape'], asKind(shape, kind, extent), `Shape of ${name}`));
  };
  const copy = () => {
    const copied = copiedName(parts, name);
    setRefused(host.write(['parts'], withCopiedPart(parts, name, copied), `Add part ${copied}`));
  };
  return (
    <div className="parttools" role="group" aria-label={`Part ${name}`}>
      <p className="meshask">
        <label className="stlunit">
          Make it a
          <select
            className="pick"
            aria-label={`Kind of shape of ${name}`}
            value={shape.kind}
            onChange={(event) => change(event.target.value as ShapeKind)}
          >
            {[...CHANGEABLE, ...(shape.kind === 'mesh' ? (['mesh'] as const) : [])].map((kind) => (
              <option key={kind} value={kind}>
                {kind}
              </option>
            ))}
          </select>
        </label>
        <span className="quiet">where it stands, as large as it is</span>
        <span className="spread" />
        <button type="button" className="button" onClick={copy}>
          Copy
        </button>
      </p>
      {shape.kind === 'mesh' && <MeshOfPart path={path} shape={shape} mesh={mesh} onRefused={setRefused} />}
      {refused !== null && (
        <p className="leaffault" role="alert">
          {refused}
        </p>
      )}
    </div>
  );
};

interface MeshOfPartProps {
  readonly path: FieldPath;
  readonly shape: MeshShape;
  readonly mesh: PartStl | null;
  readonly onRefused: (words: string | null) => void;
}

/** What the mesh of a part is, and another one in its place. */
const MeshOfPart = ({ path, shape, mesh, onRefused }: MeshOfPartProps) => {
  const host = useForm();
  const units = useUnits();
  const { state, setState, take } = useStlFile();
  const [unit, setUnit] = useState<StlUnit>(host.mm === 1 ? 'mm' : 'in');
  const name = String(path.at(-1));
  const replace = (stl: PartStl) => {
    const next = meshShape(stl, scaleOfStl(unit, host.mm), null, shape);
    const refused = host.write([...path, 'shape'], next, `Mesh of ${name}`);
    onRefused(refused);
    if (refused === null) setState({ kind: 'none' });
  };
  return (
    <>
      {mesh && <MeshFacts stl={mesh} factor={(shape.scale ?? 1) * host.mm} file="In the car file" units={units} />}
      {shape.file !== undefined && (
        <p className="quiet">Beside the car file, as {shape.file}: the window was not given it and leaves the part out.</p>
      )}
      <p className="meshask">
        <StlButton words="Another STL file…" onFile={(file) => void take(file)} />
        <StlUnitChoice unit={unit} onUnit={setUnit} />
      </p>
      <StlTold state={state} />
      {state.kind === 'read' && (
        <>
          <MeshFacts stl={state.stl} factor={scaleOfStl(unit, 1)} file={state.file} units={units} />
          <button type="button" className="button primary" onClick={() => replace(state.stl)}>
            Put it in place of this one
          </button>
        </>
      )}
    </>
  );
};
