import { useEffect } from 'react';
import { createPortal } from 'react-dom';
import { SHEET_FAMILIES, type PrintedSheet, type TemplatePaper } from '../../../geometry/index';
import { loadSheetTypeface } from '../../sheet/useSheetTypeface';

type Mark = PrintedSheet['pages'][number]['marks'][number];

const markOf = (mark: Mark, index: number) =>
  mark.kind === 'text' ? (
    <text
      key={index}
      x={mark.x}
      y={mark.y}
      fontSize={mark.size}
      fontWeight={mark.weight === 'bold' ? 600 : 400}
      fill={mark.colour}
      fontFamily={SHEET_FAMILIES}
    >
      {mark.text}
    </text>
  ) : (
    <path
      key={index}
      d={mark.commands.map(([letter, ...numbers]) => letter + numbers.join(' ')).join('')}
      fill={mark.fill ?? 'none'}
      stroke={mark.stroke ?? 'none'}
      strokeWidth={mark.width}
      strokeDasharray={mark.dash?.join(' ')}
    />
  );

interface TemplatePrintProps {
  readonly pages: PrintedSheet['pages'];
  readonly paper: TemplatePaper;
  readonly onDone: () => void;
}

/** The sheets in place of the window while the browser prints: each on a page of its own size, without margins, a point a point. */
export const TemplatePrint = ({ pages, paper, onDone }: TemplatePrintProps) => {
  useEffect(() => {
    let isWanted = true;
    window.addEventListener('afterprint', onDone);
    void loadSheetTypeface().then(() => isWanted && window.print());
    return () => {
      isWanted = false;
      window.removeEventListener('afterprint', onDone);
    };
  }, [onDone]);
  return createPortal(
    <div className={`templateprint ${paper}`} aria-hidden="true">
      {pages.map(({ width, height, marks }, index) => (
        <svg key={index} viewBox={`0 0 ${width} ${height}`} width={`${width}pt`} height={`${height}pt`}>
          {marks.map(markOf)}
        </svg>
      ))}
    </div>,
    document.body,
  );
};
