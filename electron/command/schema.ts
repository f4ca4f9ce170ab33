import { carFileSchema } from '../../geometry/index';
import type { Answer } from './answer';

/** `schema`: the JSON Schema of the car file. */
export async function answer(): Promise<Answer> {
  const document = carFileSchema();
  return { document, words: () => JSON.stringify(document, null, 2) };
}
