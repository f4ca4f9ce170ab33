import type { AxleName, CarDocument, SideName } from '../../car/document';
import { KEEP_OUT_CAUTIONS } from '../../words/fitUpCautions';
import { filledWords, growthWords, ONE_PLANE } from '../../words/keepOutWords';
import { plainNumber as plain } from '../../words/plainNumber';
import type { KeepOut } from '../keepOut/sweptSpace';
import { seenFrom, type PaperPlane } from './plane';
import type { TemplateGround } from './templateOf';

/** Over what a template is, and where it is cut. */
export interface TemplateCut {
  readonly axles: readonly AxleName[];
  readonly side: SideName;
  /** names of the setups that the space was swept over */
  readonly setups: readonly string[];
  readonly plane: PaperPlane;
}

/** All that a template says besides its outlines: the same wherever it is made. */
export function templateGround(
  document: CarDocument,
  {
    of,
    grow,
    bound,
    gap,
    isFilled,
    solidParts,
    outward,
    missing,
    warnings,
  }: Pick<KeepOut, 'of' | 'grow' | 'bound' | 'gap' | 'isFilled' | 'solidParts' | 'outward' | 'missing' | 'warnings'>,
  { axles, side, setups, plane }: TemplateCut,
): TemplateGround {
  const isWhole = warnings.every(({ code }) => code !== 'positions-unreachable');
  const facts = [
    `Swept over ${setups.length === 1 ? 'setup' : 'setups'} ${setups.join(', ')}, ${isWhole ? 'all travel and lock' : 'as much of travel and lock as can be reached'}, ${side} side.`,
    growthWords(grow),
    ONE_PLANE,
    isFilled
      ? `The outline is outside of what is swept, by ${plain(bound)} mm at most; but free space narrower than ${gap.toFixed(0)} mm is filled where parts nearly touch or part at a narrow angle: up to ${outward.most.toFixed(1)} mm there.`
      : `The outline is outside of what is swept, by ${plain(bound)} mm at most; free space narrower than ${gap.toFixed(0)} mm can be filled.`,
    ...filledWords(solidParts),
    `Plane through ${plane.point.map(plain).join(', ')}, normal ${plane.normal.map(plain).join(', ')} (car frame, mm): ${seenFrom(plane)}. Points stand as at design.`,
    ...missing.map((words) => `Left out: ${words}`),
    ...warnings.map(({ message }) => message),
  ];
  return { document, axles, side, plane, of, facts, cautions: KEEP_OUT_CAUTIONS };
}
