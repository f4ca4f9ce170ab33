/** The pages. The bench is the only one there is so far, so it is the only one here. */
export const Rail = () => (
  <nav className="rail" aria-label="Pages">
    <div className="mark">
      <svg width="30" height="30" viewBox="0 0 30 30" aria-hidden="true">
        <path d="M15 3v3M9 6h12M9 24h12M15 24v3" />
        <path d="M20 9.5H10l10 5H10l10 5H10" />
      </svg>
    </div>
    <a href="#bench" aria-current="page">
      <svg width="26" height="26" viewBox="0 0 26 26" aria-hidden="true">
        <path d="M8 3h9M12.5 3v2.500M9 6l7 1.7-7 1.7 7 1.7-7 1.7" />
        <path d="M12.5 13v4.500M3.5 19.500l9-2" />
        <rect x="15.5" y="13.5" width="6" height="9.5" rx="2" />
        <path d="M12.5 17.500h3" />
      </svg>
      Bench
    </a>
  </nav>
);
