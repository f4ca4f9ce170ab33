import type { ReactNode } from 'react';
import type { PageName } from '../state/benchStore';

export interface Page {
  readonly name: PageName;
  readonly label: string;
  /** strokes of its sign on the rail, in a square of 26 */
  readonly shape: ReactNode;
}

/** The pages of the rail, top to bottom. */
export const PAGES: readonly Page[] = [
  {
    name: 'bench',
    label: 'Bench',
    shape: (
      <>
        <path d="M8 3h9M12.5 3v2.500M9 6l7 1.7-7 1.7 7 1.7-7 1.7" />
        <path d="M12.5 13v4.500M3.5 19.500l9-2" />
        <rect x="15.5" y="13.5" width="6" height="9.5" rx="2" />
        <path d="M12.5 17.500h3" />
      </>
    ),
  },
];

/** The page that an address names; the bench where it names none. */
export const pageOfAddress = (hash: string): PageName => PAGES.find(({ name }) => hash === `#${name}`)?.name ?? 'bench';
