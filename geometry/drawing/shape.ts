/** What a surface or line of a drawing is; the screen gives it a colour, paper a grey. */
export type ShapeRole = 'body' | 'hole' | 'dark' | 'face' | 'nut' | 'scribed' | 'centre' | 'index' | 'coil';

/** One step of a placement, applied to what stands to its right: `move`, then what was moved is turned, and so on. */
export type Placement =
  | { readonly kind: 'move'; readonly by: readonly [number, number] }
  /** degrees clockwise as seen, y running down */
  | { readonly kind: 'turn'; readonly degrees: number; readonly about: readonly [number, number] }
  /** the mirror image about the upright line x = `about` */
  | { readonly kind: 'mirror'; readonly about: number };

/** A drawing as plain data, x to the right and y down; screen, paper and files draw it alike. */
export type Shape =
  | { readonly kind: 'path'; readonly role: ShapeRole; readonly d: string; readonly dash?: readonly number[] }
  | {
      readonly kind: 'rect';
      readonly role: ShapeRole;
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly radius?: number;
    }
  | { readonly kind: 'circle'; readonly role: ShapeRole; readonly cx: number; readonly cy: number; readonly r: number }
  | {
      readonly kind: 'line';
      readonly role: ShapeRole;
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
    }
  /** a numeral of a clock face, centred on x; y is its baseline */
  | { readonly kind: 'numeral'; readonly text: string; readonly x: number; readonly y: number }
  | { readonly kind: 'group'; readonly place: readonly Placement[]; readonly shapes: readonly Shape[] };

export const path = (role: ShapeRole, d: string, dash?: readonly number[]): Shape =>
  dash ? { kind: 'path', role, d, dash } : { kind: 'path', role, d };
export const rect = (role: ShapeRole, x: number, y: number, width: number, height: number, radius?: number): Shape =>
  radius === undefined ? { kind: 'rect', role, x, y, width, height } : { kind: 'rect', role, x, y, width, height, radius };
export const circle = (role: ShapeRole, cx: number, cy: number, r: number): Shape => ({ kind: 'circle', role, cx, cy, r });
export const numeral = (text: string, x: number, y: number): Shape => ({ kind: 'numeral', text, x, y });
export const group = (place: readonly Placement[], shapes: readonly Shape[]): Shape => ({ kind: 'group', place, shapes });

export const move = (x: number, y: number): Placement => ({ kind: 'move', by: [x, y] });
export const turn = (degrees: number, x = 0, y = 0): Placement => ({ kind: 'turn', degrees, about: [x, y] });
export const mirror = (about: number): Placement => ({ kind: 'mirror', about });
