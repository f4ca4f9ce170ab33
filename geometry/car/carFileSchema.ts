import * as z from 'zod/mini';
import { carSchema } from './schema/carSchema';
import { CAR_FILE_VERSION } from './versions';

/** Names the version, so that an editor never holds a file against the wrong one. */
export const CAR_FILE_SCHEMA_ID = `urn:jounce:car-file:${CAR_FILE_VERSION}`;

/**
 * JSON Schema (draft 2020-12) of the car file, for editors and other programs.
 * It says the form: keys, kinds, bounds. What one field asks of another is judged by `parseCar` alone.
 */
export function carFileSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(carSchema, {
    target: 'draft-2020-12',
    override: ({ jsonSchema }) => {
      // a tuple is exactly as long as its items; the draft takes prefixItems for the first few of any number
      if (Array.isArray(jsonSchema.prefixItems)) {
        jsonSchema.minItems = jsonSchema.prefixItems.length;
        jsonSchema.items = false;
      }
    },
  });
  const { $schema, ...rest } = schema;
  return {
    $schema,
    $id: CAR_FILE_SCHEMA_ID,
    title: 'Jounce car file',
    description:
      `One car, version ${CAR_FILE_VERSION}: pickup points, adjusters, setups. ` +
      'X forward, Y left, Z up, one origin on the middle plane. Lengths in units.length, angles in degrees, masses in kg, rates in N/mm.',
    ...rest,
  };
}
