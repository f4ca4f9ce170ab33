import { suggest } from '../car/suggest';
import type { BringFailure } from './bringPoints';

const mm = (value: number): string => `${Number(value.toPrecision(3))} mm`;

/** Why a list of points cannot be brought to the car, what it rests on, and what to do: one sentence or three. */
export function bringFailureWords(failure: BringFailure): string {
  switch (failure.kind) {
    case 'same-line':
      return `The list's ${failure.axes[0]} and ${failure.axes[1]} axes run along the same line of the car. Each of x, y and z needs a line of its own: forward or back, left or right, up or down.`;
    case 'too-few':
      return `${failure.count === 1 ? 'One reference point is' : `${failure.count} reference points are`} too few: three or more that are not on one line fix where the list lies.`;
    case 'collinear':
      return `The reference points ${failure.names.join(', ')} lie on one line, within ${mm(failure.across)} over ${mm(failure.along)}${failure.set === 'from' ? ' in the list' : ' on the car'}: the list could turn about it. Add a reference point off that line.`;
    case 'mirrored':
      return `The list is a mirror image of the reference points: they miss by ${mm(failure.rms)} as they are and by ${mm(failure.mirroredRms)} mirrored. Turn one of its axes round, or the side that was measured.`;
    case 'no-reference': {
      const hints = failure.names.map((name) => suggest(name, failure.listed)).filter((hint) => hint !== null);
      return `The list has no reference point ${failure.names.join(', ')}${hints.length > 0 ? `; ${hints.join(' ')}` : '. Name points that it has'}.`;
    }
    case 'twice':
      return `${failure.point} of the ${failure.side} side is in the list twice, in lines ${failure.lines.join(' and ')}. Leave one of them out.`;
  }
}
