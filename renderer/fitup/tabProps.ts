import type { ReactNode } from 'react';
import type { AxleName, CarDocument } from '../../geometry/index';
import type { FitUpAsked } from './fitUpQuestion';

/** What every tab of the page is handed. */
export interface TabProps {
  readonly document: CarDocument;
  /** the one on the bench */
  readonly setup: string;
  readonly axle: AxleName;
  readonly asked: FitUpAsked;
  readonly onAsk: (asked: FitUpAsked) => void;
  readonly tabs: ReactNode;
  readonly cautions: ReactNode;
  readonly theme: string;
}
