import { useLayoutEffect, useRef, useState, type CSSProperties } from 'react';

const GAP = 4;
/** Kept free at the window's edges [px]. */
const EDGE = 6;

interface FieldFaultProps {
  readonly id: string;
  readonly children: string;
}

/**
 * Why a field refuses what was typed, floating beside the field over everything that would cut it off: below it, or above
 * where the window ends.
 */
export const FieldFault = ({ id, children }: FieldFaultProps) => {
  const note = useRef<HTMLSpanElement>(null);
  const [place, setPlace] = useState<CSSProperties>({ visibility: 'hidden' });
  useLayoutEffect(() => {
    const field = note.current?.parentElement;
    if (!field) return;
    field.scrollIntoView({ block: 'nearest' });
    const put = () => {
      if (!note.current) return;
      const [at, own] = [field.getBoundingClientRect(), note.current.getBoundingClientRect()];
      const below = at.bottom + GAP + own.height + EDGE <= window.innerHeight;
      const top = below ? at.bottom + GAP : Math.max(EDGE, at.top - GAP - own.height);
      setPlace({ top, left: Math.max(EDGE, Math.min(at.right - own.width, window.innerWidth - own.width - EDGE)) });
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
