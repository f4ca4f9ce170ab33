import { Commands } from '../commands/Commands';
import { choosePage } from '../state/actions/lookAt';
import { useBench, useWindow } from './benchContext';
import { PAGES } from './pages';

/** The pages that there are. The address names the page, so that a reload stays on it. */
export const Rail = () => {
  const { store } = useWindow();
  const page = useBench((state) => state.page);
  return (
    <nav className="rail" aria-label="Pages">
      <div className="mark">
        <svg width="30" height="30" viewBox="0 0 30 30" aria-hidden="true">
          <path d="M15 3v3M9 6h12M9 24h12M15 24v3" />
          <path d="M20 9.5H10l10 5H10l10 5H10" />
        </svg>
      </div>
      {PAGES.map(({ name, label, shape }) => (
        <a
          key={name}
          href={`#${name}`}
          aria-current={name === page ? 'page' : undefined}
          onClick={(event) => {
            event.preventDefault();
            choosePage(store, name);
          }}
        >
          <svg width="26" height="26" viewBox="0 0 26 26" aria-hidden="true">
            {shape}
          </svg>
          {label}
        </a>
      ))}
      <Commands />
    </nav>
  );
};
