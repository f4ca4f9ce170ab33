/** CPU time of this process [µs]: the cores of a busy machine are shared, wall time would count the neighbours. */
const cpuMicros = (): number => {
  const { user, system } = process.cpuUsage();
  return user + system;
};

/** Long enough for the compiler to have done its work on a busy machine. */
const WARM_MICROS = 1_500_000;
const RUN_MICROS = 250_000;
const RUNS = 9;

/**
 * Median time of one unit of work [µs].
 * @param work - called again and again
 * @param units - how many units one call does
 * @param runs - an odd number
 */
export async function medianMicros(work: () => unknown, units: number, runs = RUNS): Promise<number> {
  const repeats = async (micros: number): Promise<number> => {
    const start = cpuMicros();
    let count = 0;
    while (cpuMicros() - start < micros) {
      const waiting = work();
      if (waiting instanceof Promise) await waiting;
      count++;
    }
    return (cpuMicros() - start) / (count * units);
  };
  await repeats(WARM_MICROS);
  const perUnit: number[] = [];
  for (let run = 0; run < runs; run++) perUnit.push(await repeats(RUN_MICROS));
  return perUnit.sort((a, b) => a - b)[runs >> 1];
}
