/** The library in use: a car file read, a setup changed, readings asked for. Run with `node samples/library-example.mjs`. */
import { readFile } from 'node:fs/promises';
import { assembleCar, findSetup, inContractUnits, parseCar, readingsOfAxle, sweepAxle, toMechanism } from 'jounce/geometry';

const text = await readFile(new URL('saltmarsh-hatch.jounce.json', import.meta.url), 'utf8');
const parsed = parseCar(text);
if (!parsed.ok) throw new Error(parsed.failure.faults.map(({ path, expected }) => `${path}: expected ${expected}`).join('\n'));
const { document } = parsed.value;
const mechanism = toMechanism(document);

/** The car with the rear bushing's hole at a clock angle, in degrees as in a setup of the file. */
const withBushingAt = (clock) => {
  const assembled = assembleCar(mechanism, { ...findSetup(document, 'Baseline'), front: { both: { rearBush: clock } } });
  if (!assembled.ok) throw new Error(assembled.failure.message);
  return assembled.value;
};

for (const [clock, words] of [[270, '9'], [90, '3']]) {
  const standing = readingsOfAxle(withBushingAt(clock), 'front', {});
  if (!standing.ok) throw new Error(standing.failure.message);
  const { toe, mechanicalTrail } = inContractUnits(standing.value).left;
  console.log(`toe with the bushing at ${words} o'clock: ${toe.toFixed(3).padStart(6)}°, trail ${mechanicalTrail.toFixed(1)} mm`);
}

const [bump, tooFar] = sweepAxle(withBushingAt(null), 'front', [{ travel: 30 }, { travel: 400 }]);
if (bump.ok) console.log(`camber at 30 mm of bump: ${inContractUnits(bump.value).left.camber.toFixed(2)}°`);
if (!tooFar.ok) console.log(`cannot be reached: ${tooFar.failure.kind}, ${tooFar.failure.missingMm.toFixed(1)} mm missing`);
