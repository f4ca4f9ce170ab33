/** The units that a person reads and types in. The car file keeps its own, and every result is the same underneath. */
export interface UnitChoice {
  readonly length: 'mm' | 'in';
  /** decimal degrees, or degrees and minutes */
  readonly angle: 'degrees' | 'minutes';
  /** toe as an angle, or as a length across the rim at its `toeDiameter` */
  readonly toe: 'angle' | 'rim';
  /** N, N/mm and N·m, or pounds-force with inches and feet */
  readonly force: 'newton' | 'pound';
}

/** The choice, and the diameter that toe across the rim is read at [mm]; null where the axle's file gives none. */
export interface ShownUnits extends UnitChoice {
  readonly toeDiameter: number | null;
}

export const STANDARD_UNITS: ShownUnits = { length: 'mm', angle: 'degrees', toe: 'angle', force: 'newton', toeDiameter: null };

/** "mm · degrees", as the header says it. */
export const unitWords = ({ length, angle, toe, force }: UnitChoice): string =>
  [
    length,
    angle === 'degrees' ? 'degrees' : 'degrees, minutes',
    ...(toe === 'rim' ? ['toe at the rim'] : []),
    ...(force === 'pound' ? ['lb'] : []),
  ].join(' · ');
