/**
 * Does something once a frame, in a task of its own between two frames, so that all of the window shows it in the next one. Done
 * in a frame's own callback, the panels would be painted with that frame, but the picture, which asks for a frame when something
 * moved, only with the one after: its words would always be one position behind the table.
 *
 * @param act - is given the time [ms]
 * @returns stops it
 */
export const everyFrame = (act: (now: number) => void): (() => void) => {
  let frame = 0;
  let task: ReturnType<typeof setTimeout> | undefined;
  const ask = (): void => {
    frame = requestAnimationFrame(() => {
      task = setTimeout(() => {
        act(performance.now());
        ask();
      });
    });
  };
  ask();
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(task);
  };
};
