type Triple = readonly [number, number, number];
export const M: {
  readonly A: Readonly<Record<'AF' | 'AR' | 'T' | 'RI' | 'B' | 'RO' | 'W' | 'L' | 's', Triple>>;
  readonly B: { readonly W: Triple; readonly s: Triple; readonly inner: readonly Triple[]; readonly outer: readonly Triple[] };
};
/** Wheel centre x, y [mm], camber and toe [deg] by travel, computed with 24 digits. */
export const REF: Readonly<Record<'A' | 'B', readonly (readonly [number, number, number, number])[]>>;
