import type { CarDocument, Triple } from '../../../geometry/index';

type Parts = NonNullable<CarDocument['parts']>;
type Part = Parts[string];
export type Shape = Part['shape'];
export type ShapeKind = Shape['kind'];

/** The kinds that a part can be changed to by a choice alone; a mesh takes a file. */
export const CHANGEABLE: readonly ShapeKind[] = ['sphere', 'capsule', 'cylinder', 'box', 'tyre', 'rim'];

/** Where a solid is and how large, whatever it is made of: its middle, two axes at right angles, and its whole lengths along the three. */
export interface Extent {
  readonly centre: Triple;
  readonly axes: readonly [Triple, Triple];
  readonly size: Triple;
}

const along = (from: Triple, way: Triple, by: number): Triple => [
  from[0] + by * way[0],
  from[1] + by * way[1],
  from[2] + by * way[2],
];
const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Triple, b: Triple): Triple => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a: Triple): Triple => {
  const size = Math.sqrt(dot(a, a)) || 1;
  return [a[0] / size, a[1] / size, a[2] / size];
};
const X: Triple = [1, 0, 0];
const Y: Triple = [0, 1, 0];
const Z: Triple = [0, 0, 1];

/** Two directions at right angles, the first as given. */
const square = (first: Triple, second: Triple): readonly [Triple, Triple] => {
  const a = unit(first);
  return [a, unit(along(second, a, -dot(second, a)))];
};

/** Numbers worked out here are no finer than anybody measures. */
const tidy = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;
const tidied = ([x, y, z]: Triple): Triple => [tidy(x), tidy(y), tidy(z)];

/** Where a shape is; null of one that has no numbers of its own. */
export const extentOf = (shape: Shape, mesh: { readonly from: Triple; readonly to: Triple } | null): Extent | null => {
  switch (shape.kind) {
    case 'sphere':
      return { centre: shape.at, axes: [X, Y], size: [2 * shape.radius, 2 * shape.radius, 2 * shape.radius] };
    case 'capsule':
    case 'cylinder': {
      const { from, to, radius } = shape;
      const way = along(to, from, -1);
      const length = Math.sqrt(dot(way, way));
      const first = length > 0 ? unit(way) : X;
      const caps = shape.kind === 'capsule' ? 2 * radius : 0;
      return {
        centre: along(from, way, 0.5),
        axes: square(first, Math.abs(first[2]) < 0.9 ? Z : X),
        size: [length + caps, 2 * radius, 2 * radius],
      };
    }
    case 'box':
      return { centre: shape.centre, axes: shape.axes ? square(...shape.axes) : [X, Y], size: shape.size };
    case 'mesh': {
      if (mesh === null) return null;
      const scale = shape.scale ?? 1;
      const [first, second] = square(...(shape.place?.axes ?? [X, Y]));
      const third = cross(first, second);
      const middle = mesh.from.map((value, axis) => (scale * (value + (mesh.to[axis] ?? 0))) / 2);
      const at = shape.place?.at ?? [0, 0, 0];
      const centre = along(along(along(at, first, middle[0] ?? 0), second, middle[1] ?? 0), third, middle[2] ?? 0);
      const size = mesh.from.map((value, axis) => scale * ((mesh.to[axis] ?? 0) - value)) as unknown as Triple;
      return { centre, axes: [first, second], size };
    }
    case 'tyre':
    case 'rim':
      return null;
  }
};

const isSquare = ([first, second]: Extent['axes']): boolean => dot(first, X) === 1 && dot(second, Y) === 1;

/** The shape as another kind, where it is and as large: a radius that both have stays, else the new one holds the old one's box. */
export const asKind = (shape: Shape, kind: ShapeKind, { centre, axes, size }: Extent): Shape => {
  const rounds = 'radius' in shape ? shape.radius : null;
  switch (kind) {
    case 'sphere':
      return { kind, at: tidied(centre), radius: tidy(rounds ?? Math.max(...size) / 2) };
    case 'capsule':
    case 'cylinder': {
      if (shape.kind === 'capsule' || shape.kind === 'cylinder') {
        const isPoint = shape.from.every((value, axis) => value === shape.to[axis]);
        // a capsule may be of no length, a cylinder may not
        const to = kind === 'cylinder' && isPoint ? along(shape.to, Y, shape.radius) : shape.to;
        return { kind, from: shape.from, to, radius: shape.radius };
      }
      const longest = size.indexOf(Math.max(...size));
      const way = ([...axes, cross(...axes)] as const)[longest] ?? X;
      const across = Math.max(...size.filter((_, axis) => axis !== longest));
      const half = Math.max(...size) / 2;
      return {
        kind,
        from: tidied(along(centre, way, -half)),
        to: tidied(along(centre, way, half)),
        radius: tidy(rounds ?? across / 2),
      };
    }
    case 'box':
      return {
        kind,
        centre: tidied(centre),
        size: tidied(size),
        ...(isSquare(axes) ? {} : { axes: [axes[0].map(fine), axes[1].map(fine)] as unknown as readonly [Triple, Triple] }),
      };
    case 'tyre':
    case 'rim':
      return { kind };
    case 'mesh':
      return shape;
  }
};
/** The shape moved by so much, in the file's unit; null of one that has no place of its own. */
export const movedShape = (shape: Shape, by: Triple): Shape | null => {
  const moved = (place: Triple): Triple => tidied(along(place, by, 1));
  switch (shape.kind) {
    case 'sphere':
      return { ...shape, at: moved(shape.at) };
    case 'capsule':
    case 'cylinder':
      return { ...shape, from: moved(shape.from), to: moved(shape.to) };
    case 'box':
      return { ...shape, centre: moved(shape.centre) };
    case 'mesh':
      return { ...shape, place: { ...shape.place, at: moved(shape.place?.at ?? [0, 0, 0]) } };
    case 'tyre':
    case 'rim':
      return null;
  }
};

/** A direction needs more digits than a length. */
const fine = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;

/** A name that no part has: "duct2" of "duct". */
export const copiedName = (parts: Parts, of: string): string => {
  const stem = of.replace(/\d+$/, '').slice(0, 56);
  for (let number = 2; ; number += 1) if (!Object.hasOwn(parts, `${stem}${number}`)) return `${stem}${number}`;
};

/** The same part under another name, behind the one that it is of; what may touch that one may touch this one. */
export const withCopiedPart = (parts: Parts, of: string, name: string): Parts =>
  Object.fromEntries(
    Object.entries(parts).flatMap(([own, part]) => {
      const touching: Part = part.touches?.includes(of) ? { ...part, touches: [...part.touches, name] } : part;
      const entry: [string, Part] = [own, touching];
      return own === of ? [entry, [name, part] satisfies [string, Part]] : [entry];
    }),
  );

/** Parts that may touch a part by its name. */
export const touching = (parts: Parts, name: string): readonly string[] =>
  Object.entries(parts).flatMap(([own, { touches }]) => (own !== name && touches?.includes(name) ? [own] : []));

/** Without a part, and without its name where others may touch it; undefined where none is left. */
export const withoutPart = (parts: Parts, name: string): Parts | undefined => {
  const left = Object.entries(parts)
    .filter(([own]) => own !== name)
    .map(([own, part]): [string, Part] => {
      if (!part.touches?.includes(name)) return [own, part];
      const { touches, ...rest } = part;
      const others = touches.filter((other) => other !== name);
      return [own, others.length === 0 ? rest : { ...rest, touches: others }];
    });
  return left.length === 0 ? undefined : Object.fromEntries(left);
};
