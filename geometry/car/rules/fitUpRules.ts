import { at, entriesOf, isThere, itemsOf, namesOf, textOf, vectorOf, type Place } from '../place';
import { cross, distance, length, unit } from '../../core/vector';
import type { AxleName, CarDocument } from '../document';
import { carriersOf, viewAxle, type AxleView } from './axleView';
import { judgeAxle } from './carRules';
import { judgeDirection, judgeKey, judgeName, reportMissing, reportValue, type Report } from './report';

/** Largest sum of embedded meshes, decoded. */
export const LARGEST_MESHES_BYTES = 8 * 1024 * 1024;

/** What a part can be on; what an axle does not have is left out. */
function partCarriers(view: AxleView): string[] {
  const has = (key: string): boolean => isThere(at(view.place, key));
  // off a strut the file has to say where they are
  const placed = (key: string): boolean => has(key) && (view.layout === 'strut' || isThere(at(view.place, key, 'upper')));
  return [
    'body',
    'ground',
    'wheel',
    'hub',
    ...carriersOf(view),
    ...(view.layout === 'strut' ? ['strutRod'] : []),
    ...(has('steering') ? ['rack'] : []),
    ...(placed('spring') ? ['spring'] : []),
    ...(placed('damper') ? ['damperUpper', 'damperLower'] : []),
    ...(has('antiRollBar') ? ['bar', 'barLink'] : []),
    ...(has('driveShaft') ? ['driveShaft'] : []),
  ];
}

/** What a part of an axle of a car can be on, by the names of the file. */
export const partCarriersOf = (car: CarDocument, axle: AxleName): readonly string[] => [
  ...new Set(partCarriers(viewAxle({ value: car, path: [] }, axle))),
];

/** What the lower end of a spring or damper, or the bar's link, can be on. */
export const linkCarriersOf = (car: CarDocument, axle: AxleName): readonly string[] =>
  carriersOf(viewAxle({ value: car, path: [] }, axle));

/** The axle of an entry: named, or the only one there is; without either only the car's own body will do. */
function axlesOf(entry: Place, views: readonly AxleView[], report: Report): readonly AxleView[] {
  const place = at(entry, 'axle');
  if (isThere(place)) {
    const view = judgeAxle(report, place, views);
    return view === undefined ? [] : [view];
  }
  return views.filter((view) => isThere(view.place));
}

function judgeCarrier(report: Report, place: Place, axles: readonly AxleView[]): void {
  if (axles.length === 0 || axles.some((view) => view.layout === undefined)) return;
  const name = textOf(place);
  if (axles.length > 1 && name !== undefined && name !== 'body' && name !== 'ground') {
    const entry = { value: undefined, path: place.path.slice(0, -1) };
    reportMissing(report, at(entry, 'axle'), 'missing-key', `"front" or "rear": \`${name}\` is on an axle`);
    return;
  }
  judgeName(report, place, 'unknown-carrier', 'what carries it', axles.flatMap(partCarriers));
}

/** Carriers that turn with the wheel: nothing on them keeps a direction, or a place. */
export const SPINNING: readonly string[] = ['wheel', 'hub', 'driveShaft'];

/** A carrier of a bolt, a bore or the end of a hose: one that does not spin, and that the car carries with it. */
function judgeSteadyCarrier(report: Report, place: Place, axles: readonly AxleView[]): void {
  const name = textOf(place);
  if (name !== undefined && (SPINNING.includes(name) || name === 'ground')) {
    const hint = name === 'ground' ? 'it does not move with the car' : 'it spins: take what it turns in, such as "knuckle"';
    reportValue(report, place, 'spinning-carrier', 'a part of the car that does not spin', hint);
    return;
  }
  judgeCarrier(report, place, axles);
}

/** Two axes of a box or a mesh's place have to span a plane. */
function judgeAxes(report: Report, place: Place): void {
  const [first, second] = itemsOf(place).map((item) => judgeDirection(report, item));
  if (first === undefined || second === undefined) return;
  if (length(cross(unit(first), unit(second))) < 1e-6)
    reportValue(report, place, 'parallel-directions', 'two directions that are not parallel');
}

const BASE64 = /^[A-Za-z0-9+/]*={0,2}$/;

/** Bytes of a mesh in base64, undefined when it is none (reported). */
function judgeMesh(report: Report, shape: Place): number {
  const [file, data] = [at(shape, 'file'), at(shape, 'data')];
  if (isThere(file) === isThere(data)) {
    report({
      code: 'mesh-source',
      path: shape.path,
      found: isThere(file) ? 'both "file" and "data"' : 'neither "file" nor "data"',
      expected: 'one of them',
      hint: null,
    });
  }
  const text = textOf(data);
  if (text === undefined) return 0;
  if (text.length % 4 !== 0 || !BASE64.test(text)) reportValue(report, data, 'mesh-not-base64', 'binary STL in base64');
  return Math.floor((text.length * 3) / 4);
}

function judgeShape(report: Report, shape: Place): number {
  const kind = textOf(at(shape, 'kind'));
  if (kind === 'capsule' || kind === 'cylinder') {
    const [from, to] = [vectorOf(at(shape, 'from')), vectorOf(at(shape, 'to'))];
    if (kind === 'cylinder' && from !== undefined && to !== undefined && distance(from, to) < 1e-6) {
      reportValue(report, at(shape, 'to'), 'coincident-points', 'another place than `from`');
    }
  }
  judgeAxes(report, at(shape, 'axes'));
  judgeAxes(report, at(shape, 'place', 'axes'));
  return kind === 'mesh' ? judgeMesh(report, shape) : 0;
}

/** Solids that an axle's own numbers make, and that no carrier is named after. */
const OWN_SOLIDS = ['disc', 'strutTube'];

function judgeParts(car: Place, views: readonly AxleView[], report: Report): void {
  const parts = at(car, 'parts');
  const touchable = [...namesOf(parts), ...OWN_SOLIDS, ...views.flatMap(partCarriers)];
  let meshBytes = 0;
  for (const [, part] of entriesOf(parts)) {
    judgeCarrier(report, at(part, 'on'), axlesOf(part, views, report));
    for (const other of itemsOf(at(part, 'touches')))
      judgeName(report, other, 'unknown-part', 'a part of this file or a carrier', touchable);
    meshBytes += judgeShape(report, at(part, 'shape'));
  }
  if (meshBytes > LARGEST_MESHES_BYTES) {
    report({
      code: 'meshes-too-large',
      path: parts.path,
      found: `${meshBytes} bytes of meshes`,
      expected: `${LARGEST_MESHES_BYTES} bytes (8 MiB) at most in all`,
      hint: 'give "file": a mesh of its own beside the car file',
    });
  }
}

function judgeJoints(car: Place, views: readonly AxleView[], report: Report): void {
  for (const [name, joint] of entriesOf(at(car, 'joints'))) {
    const axles = axlesOf(joint, views, report);
    const owners = axles.filter((view) => view.pointNames.includes(name));
    judgeKey(
      report,
      name,
      joint,
      'unknown-point',
      'a point of an axle',
      axles.flatMap((view) => view.pointNames),
    );
    if (owners.length > 1)
      reportMissing(report, at(joint, 'axle'), 'missing-key', `"front" or "rear": both have a point \`${name}\``);
    judgeDirection(report, at(joint, 'bolt'));
    judgeDirection(report, at(joint, 'bore'));
    judgeSteadyCarrier(report, at(joint, 'boltOn'), owners);
    judgeSteadyCarrier(report, at(joint, 'boreOn'), owners);
    const [bore, boreOn, rod] = [at(joint, 'bore'), at(joint, 'boreOn'), at(joint, 'rod')];
    if (isThere(bore) && !isThere(boreOn)) reportMissing(report, boreOn, 'missing-key', 'what carries the bore');
    if (!isThere(bore) && !isThere(rod))
      reportMissing(report, rod, 'missing-key', '"bore" and "boreOn", or the "rod" that is free to turn about itself');
    if (owners.length > 0)
      judgeName(
        report,
        rod,
        'unknown-rod',
        'a rod of this axle',
        owners.flatMap((view) => view.rodNames),
      );
    if (owners.length === 1 && !isThere(bore)) judgeFreeRod(report, name, joint, owners[0]);
  }
}

/** Whether every rod runs from a point of the body to one of the knuckle: of one that does not something else is said. */
function areSound({ rods, pointNames, pivot }: AxleView): boolean {
  const inners = rods.map(({ inner }) => inner);
  return rods.every(
    ({ inner, outer }) =>
      inner !== undefined &&
      outer !== undefined &&
      pointNames.includes(inner) &&
      pointNames.includes(outer) &&
      outer !== pivot &&
      !inners.includes(outer),
  );
}

/** Without a bore it is the rod's own line that tilts: the rod has to end at the joint, be free to turn, and not carry the bolt. */
function judgeFreeRod(report: Report, point: string, joint: Place, view: AxleView): void {
  const place = at(joint, 'rod');
  const rod = view.rods.find(({ name }) => name === textOf(place));
  if (rod === undefined || !areSound(view)) return;
  if (rod.inner !== point && rod.outer !== point) reportValue(report, place, 'joint-rod', `a rod that ends at \`${point}\``);
  else if (view.rods.some((other) => other.name !== rod.name && other.outer === rod.outer))
    reportValue(report, place, 'joint-rod', '"bore" and "boreOn": the rod is one body with another and cannot turn about itself');
  else if (
    [
      ['spring', 'lowerOn'],
      ['damper', 'lowerOn'],
      ['antiRollBar', 'linkOn'],
    ].some(([part, on]) => textOf(at(view.place, part, on)) === rod.name)
  )
    reportValue(report, place, 'joint-rod', '"bore" and "boreOn": what the rod carries keeps it from turning about itself');
  else if (textOf(at(joint, 'boltOn')) === rod.name)
    reportValue(report, at(joint, 'boltOn'), 'joint-rod', 'what the rod is bolted to, not the rod itself');
}

function judgeSpans(car: Place, views: readonly AxleView[], report: Report): void {
  for (const [, span] of entriesOf(at(car, 'spans'))) {
    const axles = axlesOf(span, views, report);
    for (const end of ['from', 'to']) {
      judgeName(
        report,
        at(span, end),
        'unknown-point',
        'a point of the axle, or [x, y, z]',
        axles.flatMap((view) => view.pointNames),
      );
      judgeSteadyCarrier(report, at(span, `${end}On`), axles);
    }
  }
}

export function judgeFitUp(car: Place, views: readonly AxleView[], report: Report): void {
  judgeParts(car, views, report);
  judgeJoints(car, views, report);
  judgeSpans(car, views, report);
}
