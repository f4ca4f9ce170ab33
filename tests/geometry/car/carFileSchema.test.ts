import { describe, expect, it } from 'vitest';
import { CAR_FILE_SCHEMA_ID, carFileSchema } from '../../../geometry/car/carFileSchema';
import { CAR_FILE_VERSION } from '../../../geometry/car/versions';
import { BAD_FILES } from '../../fixtures/bad';
import { GOOD_CARS } from './fixtures';
import { judgeBySchema } from './judgeBySchema';

describe('the JSON Schema of the car file', () => {
  const schema = carFileSchema();

  it('as published is fresh (renew it with `npx vitest run tests/geometry/car/carFileSchema.test.ts -u`)', async () => {
    await expect(`${JSON.stringify(schema, null, 2)}\n`).toMatchFileSnapshot(
      `../../../samples/jounce-car-${CAR_FILE_VERSION}.schema.json`,
    );
  });

  it('carries the version in its id and names its draft', () => {
    expect(schema['$id']).toBe(CAR_FILE_SCHEMA_ID);
    expect(CAR_FILE_SCHEMA_ID).toContain(String(CAR_FILE_VERSION));
    expect(schema['$schema']).toBe('https://json-schema.org/draft/2020-12/schema');
  });

  it.each(GOOD_CARS)('accepts %s, by a reader of schemas of its own', (_name, text) => {
    expect(judgeBySchema(schema, JSON.parse(text))).toEqual([]);
  });

  it('refuses the bad files that break the form', () => {
    const codes = [
      'unknown-key',
      'missing-key',
      'wrong-type',
      'wrong-length',
      'out-of-range',
      'not-a-choice',
      'unknown-kind',
      'bad-name',
      'empty-text',
    ];
    // these are asked for by a rule that spans fields, or only in inches: the schema cannot know
    const ofRules = BAD_FILES.filter(
      ({ code, path }) => code === 'missing-key' && /rods$|rod$|lower|upper|boreOn$|\.axle$/.test(path ?? ''),
    );
    // a step is small for its range, not by itself
    const ofTwoFields = BAD_FILES.filter(({ path, text }) => /\.step$/.test(path ?? '') && /"step": 1e-\d/.test(text));
    expect(ofTwoFields).toHaveLength(2);
    const ofForm = BAD_FILES.filter(
      (file) => codes.includes(file.code) && !ofRules.includes(file) && !ofTwoFields.includes(file),
    );
    expect(ofForm.length).toBeGreaterThan(90);
    for (const file of ofForm) expect(judgeBySchema(schema, JSON.parse(file.text)), file.title).not.toEqual([]);
  });

  it('tells an editor what a key means', () => {
    const text = JSON.stringify(schema);
    expect(text.match(/"description"/g)?.length).toBeGreaterThan(60);
  });
});
