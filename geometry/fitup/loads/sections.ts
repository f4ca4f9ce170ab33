import type { AxleDocument } from '../../car/document';
import { bucklingOf } from './buckling';
import type { LinkRow } from './linkRow';

/** Sections of an axle in mm, as far as the file gives them. */
export class Sections {
  constructor(
    private readonly document: AxleDocument,
    private readonly mm: number,
  ) {}

  /** How much push a straight two-force bar takes. @returns the row's fields */
  of(name: string, size: number, axial: number): Pick<LinkRow, 'buckling' | 'why'> {
    const section = Object.hasOwn(this.document.sections ?? {}, name) ? this.document.sections![name] : undefined;
    if (section === undefined)
      return { buckling: null, why: { bending: STRAIGHT, buckling: `the file has no section of ${name}` } };
    const buckling = bucklingOf(section, this.mm, size, axial);
    if (buckling.governs === null)
      return { buckling: null, why: { bending: STRAIGHT, buckling: `the section of ${name} has neither modulus nor yield` } };
    return { buckling, why: { bending: STRAIGHT } };
  }
}

export const STRAIGHT = 'pulled and pushed at its ends alone: taken as straight, it does not bend';
export const BEAM = 'a beam: Euler’s load is that of a straight bar with nothing on it';
