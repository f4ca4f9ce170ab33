import { Rule } from './marks';

/** Toe is drawn ten times as large as it is: a tenth of a degree would not be seen. */
const TOE_SCALE = 10;
/** Drawing units of one millimetre of ride height, and how far the drawing goes. */
const HEIGHT_SCALE = 0.5;
const HEIGHT_ROOM = 26;

/** Both wheels of the axle from above, the front of the car up. @param left - toe [degrees per wheel, + toe-in], null where there is none */
export const ToePart = ({ left, right }: { readonly left: number | null; readonly right: number | null }) => (
  <>
    <path className="scribed" d="M60 4v112" strokeDasharray="9 3 2 3" />
    <path className="index" d="M60 2l-5 9h10z" />
    <rect className="dark" x="26" y="56" width="68" height="8" rx="2" />
    <g transform={`translate(26 60) rotate(${TOE_SCALE * (left ?? 0)})`}>
      <rect className="face" x="-15" y="-46" width="30" height="92" rx="7" />
      <path className="scribed" d="M0-46v92" />
    </g>
    <g transform={`translate(94 60) rotate(${-TOE_SCALE * (right ?? 0)})`}>
      <rect className="face" x="-15" y="-46" width="30" height="92" rx="7" />
      <path className="scribed" d="M0-46v92" />
    </g>
  </>
);

/** The wheel in its arch, seen from the left. @param mm - height of the body over design; null: none is asked for */
export const HeightPart = ({ mm }: { readonly mm: number | null }) => {
  const up = Math.max(-HEIGHT_ROOM, Math.min(HEIGHT_ROOM, HEIGHT_SCALE * (mm ?? 0)));
  return (
    <>
      <path className="scribed" d="M2 112h116" />
      <circle className="dark" cx="56" cy="76" r="36" />
      <circle className="face" cx="56" cy="76" r="21" />
      <circle className="hole" cx="56" cy="76" r="5" />
      <g transform={`translate(0 ${-up})`}>
        <path className="body" d="M2 30h100v36h-4a42 42 0 00-84 0H2z" />
        <path className="index" d="M102 48l9-5v10z" />
      </g>
      <g transform="rotate(-90 114 48)">
        <Rule middle={114} pitch={10 * HEIGHT_SCALE} count={11} base={50} long={-9} short={-5} />
      </g>
    </>
  );
};
