/** CPU time of this process [µs]: the cores of a busy machine are shared, wall time would count the neighbours. */
const cpuMicros = (): number => {
  const { user, system } = process.cpuUsage();
  return user + system;
};

const WARM_MICROS = 300_000;
const RUNS = 7;

/**
 * Median time of one unit of work [µs].
 * @param work - called again and again
 * @param units - how many units one call does
 */
export async function medianMicros(work: () => unknown, units: number): Promise<number> {
  const started = cpuMicros();
  let repeats = 0;
  while (cpuMicros() - started < WARM_MICROS) {
    await work();
    repeats++;
  }
  const perUnit: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const start = cpuMicros();
    for (let i = 0; i < repeats; i++) {
      const waiting = work();
      if (waiting instanceof Promise) await waiting;
    }
    perUnit.push((cpuMicros() - start) / (repeats * units));
  }
  return perUnit.sort((a, b) => a - b)[RUNS >> 1];
}
