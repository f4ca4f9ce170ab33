import type { ReactNode } from 'react';
import type { SideName } from '../../geometry/index';
import { PickRow } from '../studies/answers/AnswerCells';

interface RowNameProps {
  /** the rows among which one is chosen */
  readonly group: string;
  /** what the row is of, for those who listen; its side is said behind it */
  readonly label: string;
  readonly side: SideName;
  readonly checked: boolean;
  readonly onPick: () => void;
  readonly children: ReactNode;
}

/** The head of a row that drives the picture: its choice, its side, its name. */
export const RowName = ({ group, label, side, checked, onPick, children }: RowNameProps) => (
  <th scope="row">
    <span className="fituppair">
      <PickRow group={group} label={`${label}, ${side}`} checked={checked} onPick={onPick} />
      <span className={`sidemark ${side}`} title={side}>
        {side === 'left' ? 'L' : 'R'}
      </span>
      <span className="pairwords">{children}</span>
    </span>
  </th>
);
