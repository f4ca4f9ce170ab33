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
  {
    name: 'points',
    label: 'Points',
    shape: (
      <>
        <path d="M7 4v6M4 7h6M18 8v6M15 11h6M9 17v6M6 20h6" />
        <path d="M10.500 8.200l4 1.600M17 14.500l-6 4" strokeDasharray="2 2.500" />
      </>
    ),
  },
  {
    name: 'studies',
    label: 'Studies',
    shape: (
      <>
        <path d="M4 3v20h19" />
        <path d="M5 20c5-1 7-13 17-14" />
        <path d="M8 23v-2M12 23v-2M16 23v-2M20 23v-2" />
      </>
    ),
  },
  {
    name: 'fitup',
    label: 'Fit-up',
    shape: (
      <>
        <path d="M4 3c5 4 5 16 0 20M22 3c-5 4-5 16 0 20" />
        <path d="M9 13h8M11 10.500L8.500 13 11 15.500M15 10.500l2.500 2.500-2.500 2.500" />
      </>
    ),
  },
  {
    name: 'sheet',
    label: 'Sheet',
    shape: (
      <>
        <path d="M6 3h10l5 5v15H6z" />
        <path d="M16 3v5h5M9 12h9M9 16h9M9 20h5" />
      </>
    ),
  },
];

/** The page that an address names; the bench where it names none. */
export const pageOfAddress = (hash: string): PageName => PAGES.find(({ name }) => hash === `#${name}`)?.name ?? 'bench';
