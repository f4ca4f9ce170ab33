import type { AxleName, CarDocument } from '../car/document';
import { formatPath } from '../car/fault';
import type { AxleMechanism } from '../car/mechanism';
import { listNames, suggest } from '../car/suggest';
import { distance } from '../core/vector';
import type { AssembledSide } from '../setup/assembleSide';
import type { FitUpWarning } from './fitUpWarnings';
import { SUGGESTED_MARGINS } from './margins';
import { bodyOf, type Piece } from './pieces';

/** A corner with the solids that it has. */
export interface CornerPieces {
  readonly axle: AxleMechanism;
  readonly side: AssembledSide;
  readonly pieces: readonly Piece[];
}

/** What moves at a wheel and has no shape of its own in the file, by the carrier that a part of it would be on. */
interface Shapeless {
  readonly carrier: string;
  readonly words: string;
}

/**
 * What the picture shows and nobody looks at: bodies of which the file has no shape. A caliper is no knuckle.
 * @param corners - of the axles that are looked at; each axle is told once
 */
export function shapelessWarnings(corners: readonly CornerPieces[]): FitUpWarning[] {
  const found = new Map<AxleName, readonly Shapeless[]>();
  for (const corner of corners) {
    const { axle } = corner.axle;
    const before = found.get(axle);
    const now = shapelessOf(corner);
    // a part on one side only leaves the other without
    found.set(
      axle,
      before === undefined ? now : [...before, ...now.filter(({ carrier }) => !before.some((one) => one.carrier === carrier))],
    );
  }
  return [...found].flatMap(([axle, bodies]): FitUpWarning[] => {
    if (bodies.length === 0) return [];
    const [names, carriers] = [bodies.map(({ words }) => words), [...new Set(bodies.map(({ carrier }) => carrier))]];
    return [
      {
        code: 'no-shape',
        path: 'parts',
        message: `The file has no shape of the ${axle} ${names.join(', ')}: nothing is known of what comes near. Give them as parts on ${carriers.join(', ')}.`,
      },
    ];
  });
}

function shapelessOf({ axle, pieces }: Omit<CornerPieces, 'side'>): Shapeless[] {
  const has = (carrier: string): boolean => pieces.some((piece) => piece.body === bodyOf(axle, carrier));
  const own = (carrier: string): boolean => pieces.some((piece) => piece.carrier === carrier && piece.kind !== 'caliperRim');
  const all: (Shapeless & { readonly isThere: boolean; readonly isLooked: boolean })[] = [
    { carrier: 'knuckle', words: 'knuckle', isThere: true, isLooked: own('knuckle') || own('trailingArm') },
    { carrier: 'spring', words: 'spring', isThere: axle.spring !== null, isLooked: has('spring') },
    { carrier: 'strutRod', words: 'damper rod', isThere: axle.layout === 'strut', isLooked: has('strutRod') },
    {
      carrier: 'damperLower',
      words: 'damper',
      isThere: Boolean(axle.damper?.points),
      isLooked: has('damperLower') || has('damperUpper'),
    },
    { carrier: 'bar', words: 'anti-roll bar', isThere: axle.bar !== null, isLooked: has('bar') },
    { carrier: 'barLink', words: 'bar link', isThere: axle.bar !== null, isLooked: has('barLink') },
    { carrier: 'rack', words: 'rack', isThere: axle.steering !== null, isLooked: has('rack') },
  ];
  const bodies = new Set<string>();
  for (const { name } of axle.rods) {
    const body = bodyOf(axle, name);
    if (bodies.has(body)) continue;
    bodies.add(body);
    all.push({ carrier: name, words: name, isThere: true, isLooked: has(name) });
  }
  return all.filter(({ isThere, isLooked }) => isThere && !isLooked).map(({ carrier, words }) => ({ carrier, words }));
}

/** A part that is farther than this from its own wheel at design is most likely given in another unit, or of another place [mm]. */
const FAR_MM = 2000;

/** Parts that are nowhere near their wheel: they would be clear of everything, and that says nothing. */
export function farWarnings(corners: readonly CornerPieces[]): FitUpWarning[] {
  const found = new Map<string, FitUpWarning>();
  for (const { axle, side, pieces } of corners)
    for (const { name, part, solid } of pieces) {
      if (part === null || found.has(name)) continue;
      const { centre, radius } = solid.ball;
      const far = distance(centre, side.mechanism.points['wheelCentre']) - radius;
      if (far < FAR_MM) continue;
      const unit =
        part.shape.kind === 'mesh'
          ? ': is the unit of its mesh, its "scale" or its "place" another'
          : ': are its numbers of another unit or place';
      found.set(name, {
        code: 'part-far',
        path: `parts.${name}`,
        message: `"${name}" is ${(far / 1000).toFixed(1)} m or more from the wheel centre of the ${axle.axle} axle${unit}? What is so far off is clear of everything.`,
      });
    }
  return [...found.values()];
}

/**
 * Parts whose `kind` picks no margin, neither of the file nor of those suggested: the default counts for them, which is the smaller one
 * where the name was mistyped.
 */
export function kindWarnings({ parts = {}, margins = {} }: CarDocument): FitUpWarning[] {
  const known = [...new Set([...Object.keys(margins), ...Object.keys(SUGGESTED_MARGINS)])];
  return Object.entries(parts).flatMap(([name, { kind, margin }]): FitUpWarning[] => {
    if (kind === undefined || margin !== undefined || known.includes(kind)) return [];
    const meant = suggest(kind, known) ?? `there are ${listNames(known)}.`;
    return [
      {
        code: 'kind-without-margin',
        path: formatPath(['parts', name, 'kind']) ?? 'parts',
        message: `No margin is called "${kind}", so that "${name}" keeps the default: ${meant}`,
      },
    ];
  });
}
