import type { Verdict } from '../../compute/limits';

/** Tick, triangle or octagon: a verdict is told apart without its colour. */
export const VerdictShape = ({ verdict }: { readonly verdict: Verdict }) => {
  switch (verdict) {
    case 'within':
      return (
        <svg viewBox="0 0 12 12" aria-hidden="true">
          <path d="M2 6.5l3 3L10.5 2.5" fill="none" stroke="currentColor" strokeWidth="1.8" />
        </svg>
      );
    case 'close':
      return (
        <svg viewBox="0 0 12 12" aria-hidden="true">
          <path d="M6 1l5.2 9.6H.8z" fill="none" stroke="currentColor" strokeWidth="1.4" />
          <path d="M6 4.6v3M6 8.4v1.2" stroke="currentColor" strokeWidth="1.4" />
        </svg>
      );
    case 'broken':
      return (
        <svg viewBox="0 0 12 12" aria-hidden="true">
          <path fillRule="evenodd" d="M3.5.5h5l3 3v5l-3 3h-5l-3-3v-5zM3 5v2h6V5z" fill="currentColor" />
        </svg>
      );
  }
};
