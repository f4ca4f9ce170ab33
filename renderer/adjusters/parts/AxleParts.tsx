import { heightPart, toePart } from '../../../geometry/index';
import { Shapes } from './Shapes';

/** Both wheels of the axle from above. @param left - toe [degrees per wheel, + toe-in], null where there is none */
export const ToePart = ({ left, right }: { readonly left: number | null; readonly right: number | null }) => (
  <Shapes of={toePart(left, right)} />
);

/** The wheel in its arch, seen from the left. @param mm - height of the body over design; null: none is asked for */
export const HeightPart = ({ mm }: { readonly mm: number | null }) => <Shapes of={heightPart(mm)} />;
