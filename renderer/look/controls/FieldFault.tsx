import { useLayoutEffect, useRef, useState, type CSSProperties } from 'react';
import { faultPlace } from './faultPlace';

interface FieldFaultProps {
  readonly id: string;
  readonly children: string;
}

/** The other controls of the panel that a field stands in. */
const controlsRound = (field: HTMLElement): readonly DOMRect[] =>
  [...(field.closest('section, dialog, footer') ?? document.body).querySelectorAll('button, input, select')]
    .filter((control) => !field.contains(control))
    .map((control) => control.getBoundingClientRect())
    .filter(({ width, height }) => width > 0 && height > 0);

/** Why a field refuses what was typed, floating beside the field over everything that would cut it off. */
export const FieldFault = ({ id, children }: FieldFaultProps) => {
  const note = useRef<HTMLSpanElement>(null);
  const [place, setPlace] = useState<CSSProperties>({ visibility: 'hidden' });
  useLayoutEffect(() => {
    const field = note.current?.parentElement;
    if (!field) return;
    field.scrollIntoView({ block: 'nearest' });
    const put = () => {
      if (!note.current) return;
      setPlace(
        faultPlace({
          field: field.getBoundingClientRect(),
          note: note.current.getBoundingClientRect(),
          window: { width: window.innerWidth, height: window.innerHeight },
          controls: controlsRound(field),
        }),
      );
    };
    put();
    window.addEventListener('scroll', put, true);
    window.addEventListener('resize', put);
    return () => {
      window.removeEventListener('scroll', put, true);
      window.removeEventListener('resize', put);
    };
  }, [children]);
  return (
    <span ref={note} id={id} className="fieldfault" role="alert" style={place}>
      {children}
    </span>
  );
};
