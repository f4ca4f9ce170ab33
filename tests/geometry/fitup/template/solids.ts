import type { SectionedMesh } from '../../../../geometry/fitup/template/section';

type Point = readonly [number, number, number];

/** A closed grid that joins itself in both ways, or in the first way with a cap of one corner at each end of the second. */
function gridMesh(
  nu: number,
  nv: number,
  at: (u: number, v: number) => Point,
  ends: readonly [Point, Point] | null,
): SectionedMesh {
  const corners: Point[] = [];
  for (let v = 0; v < nv; v++) for (let u = 0; u < nu; u++) corners.push(at(u / nu, v / nv));
  const triangles: number[] = [];
  const corner = (u: number, v: number): number => (v % nv) * nu + (u % nu);
  for (let v = 0; v < (ends === null ? nv : nv - 1); v++)
    for (let u = 0; u < nu; u++)
      triangles.push(corner(u, v), corner(u + 1, v), corner(u + 1, v + 1), corner(u, v), corner(u + 1, v + 1), corner(u, v + 1));
  if (ends !== null) {
    const [first, last] = [corners.length, corners.length + 1];
    corners.push(...ends);
    for (let u = 0; u < nu; u++) {
      triangles.push(first, corner(u + 1, 0), corner(u, 0));
      triangles.push(last, corner(u, nv - 1), corner(u + 1, nv - 1));
    }
  }
  return { positions: Float64Array.from(corners.flat()), triangles: Uint32Array.from(triangles) };
}

/** A ball about a place, its radius as a function of the direction's two shares 0…1; a sphere for a constant. */
export function ball(centre: Point, radius: (u: number, v: number) => number, nu = 96, nv = 64): SectionedMesh {
  const at = (u: number, v: number): Point => {
    const polar = Math.PI * (1 - (v * nv + 1) / (nv + 1));
    const r = radius(u, v);
    return [
      centre[0] + r * Math.sin(polar) * Math.cos(2 * Math.PI * u),
      centre[1] + r * Math.sin(polar) * Math.sin(2 * Math.PI * u),
      centre[2] + r * Math.cos(polar),
    ];
  };
  const [low, high] = [radius(0, 0), radius(0, 1)];
  return gridMesh(nu, nv, at, [
    [centre[0], centre[1], centre[2] - low],
    [centre[0], centre[1], centre[2] + high],
  ]);
}

/** A ring about z. */
export function torus(centre: Point, ring: number, tube: number, nu = 192, nv = 96): SectionedMesh {
  return gridMesh(
    nu,
    nv,
    (u, v) => {
      const [a, b] = [2 * Math.PI * u, 2 * Math.PI * v];
      const r = ring + tube * Math.cos(b);
      return [centre[0] + r * Math.cos(a), centre[1] + r * Math.sin(a), centre[2] + tube * Math.sin(b)];
    },
    null,
  );
}

/** A cylinder about z with flat ends. */
export function cylinder(radius: number, low: number, high: number, nu = 360): SectionedMesh {
  return gridMesh(
    nu,
    2,
    (u, v) => [radius * Math.cos(2 * Math.PI * u), radius * Math.sin(2 * Math.PI * u), v === 0 ? low : high],
    [
      [0, 0, low],
      [0, 0, high],
    ],
  );
}

/** A box along the axes. */
export function box(min: Point, max: Point): SectionedMesh {
  const corners = Array.from({ length: 8 }, (_, i): Point => [
    i & 1 ? max[0] : min[0],
    i & 2 ? max[1] : min[1],
    i & 4 ? max[2] : min[2],
  ]);
  const faces = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  return {
    positions: Float64Array.from(corners.flat()),
    triangles: Uint32Array.from(faces.flatMap(([a, b, c, d]) => [a, b, c, a, c, d])),
  };
}
