import { useLayoutEffect, useRef, type MouseEvent, type ReactNode, type RefObject } from 'react';
import { LockShape } from './LockShape';
import { NextStepWords } from './NextStepWords';
import { useInSight } from './useInSight';

/** As long as two presses may be one double click [ms]. */
const DOUBLE_MS = 600;

export interface HeldFrameProps {
  /** what the group is called aloud */
  readonly label: string;
  readonly name: string;
  /** its size, range or sense, small behind the name */
  readonly note: string;
  readonly locked: boolean;
  /** why what is drawn does not turn; undefined where it does */
  readonly why?: string | undefined;
  readonly dense: boolean;
  /** which of its fields had the focus, or was asked for, when the card was taken in hand */
  readonly focusField: number | null;
  /** at the right of the head, where nothing is locked */
  readonly tools?: ReactNode;
  /** what turns under the hand */
  readonly hand: { readonly ref: RefObject<HTMLDivElement | null>; readonly handlers: object };
  /** which of its fields counts what is drawn: 0, or 1 for the right side's own; 0 where it is left out */
  readonly dialField?: number;
  readonly drawing: ReactNode;
  /** fields, steps and words beside the drawing */
  readonly children: ReactNode;
}

/** The card in hand: its head, its drawing that is turned, what stands beside it, and what the next step does. */
export const HeldFrame = (props: HeldFrameProps) => {
  const { locked, dense, focusField, hand } = props;
  const card = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (focusField !== null) card.current?.querySelectorAll<HTMLInputElement>('.field input')[focusField]?.focus();
  }, [focusField]);
  useInSight(card);
  const isNew = useRef(true);
  useLayoutEffect(() => {
    const timer = setTimeout(() => (isNew.current = false), DOUBLE_MS);
    return () => clearTimeout(timer);
  }, []);
  /** The second press of a double click that took the card in hand was meant for the card, not for what came to lie under it. */
  const letGo = (event: MouseEvent) => {
    if (!isNew.current || event.detail < 2) return;
    event.preventDefault();
    event.stopPropagation();
  };
  /** What was turned coarsely by hand goes on finely with the arrow keys; a finger wants no keyboard over the screen. */
  const takeKeys = ({ nativeEvent }: MouseEvent) => {
    if (locked || (nativeEvent instanceof PointerEvent && nativeEvent.pointerType === 'touch')) return;
    card.current?.querySelectorAll<HTMLInputElement>('.field input')[props.dialField ?? 0]?.focus({ preventScroll: true });
  };
  return (
    <div
      ref={card}
      className={`held${dense ? ' densecard' : ''}`}
      role="group"
      aria-label={`${props.label}, in hand`}
      onMouseDownCapture={letGo}
      onClickCapture={letGo}
      onDoubleClickCapture={letGo}
    >
      <div className="heldhead">
        <span className="heldname">
          <b>{props.name}</b>
          <span className="heldsize">{props.note}</span>
        </span>
        {locked ? <LockShape /> : props.tools}
      </div>
      <div className="heldbody">
        <div
          ref={hand.ref}
          className={`dial${locked ? '' : ' turns'}`}
          title={props.why}
          onMouseDown={locked ? (event) => event.preventDefault() : undefined}
          onClick={takeKeys}
          {...hand.handlers}
        >
          {props.drawing}
        </div>
        <div className="heldside">{props.children}</div>
      </div>
      {!locked && (
        <div className="effects">
          <NextStepWords />
        </div>
      )}
    </div>
  );
};
