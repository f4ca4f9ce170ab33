/** A padlock before what cannot be turned. */
export const LockShape = () => (
  <svg className="lock" viewBox="0 0 14 14" aria-hidden="true">
    <rect x="2" y="6" width="10" height="7" rx="1" />
    <path d="M4.5 6V4a2.5 2.5 0 015 0v2" />
  </svg>
);
