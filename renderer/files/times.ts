const DAY_MS = 24 * 60 * 60 * 1000;

/**
 * A time as one says it: 17:42 today, with the day before it otherwise.
 * @param at - ms since 1970
 */
export const clockTime = (at: number, now: number = Date.now()): string => {
  const [date, today] = [new Date(at), new Date(now)];
  const clock = date.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  if (date.toDateString() === today.toDateString()) return clock;
  const isNear = Math.abs(now - at) < 300 * DAY_MS;
  const day = date.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', ...(!isNear && { year: 'numeric' }) });
  return `${day}, ${clock}`;
};

/** The same with seconds, for a copy that was kept a moment before an end. */
export const clockTimeExact = (at: number): string => new Date(at).toLocaleTimeString('en-GB');
