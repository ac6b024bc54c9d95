import { cableExplanationShape } from '../explain/cable-json.ts';
import { checkExplanationShape } from '../explain/check-json.ts';
import { formatExplanationShape } from '../explain/format-json.ts';
import { interfaceExplanationShape } from '../explain/interface-json.ts';
import { reportShape } from '../findings/json.ts';
import { reviewShape } from '../review/json.ts';
import { analysisShape } from './analysis.ts';
import type { JsonSchema } from './schema.ts';

const explanations = [
  formatExplanationShape,
  checkExplanationShape,
  cableExplanationShape,
  interfaceExplanationShape,
].map(({ schema }) => schema);

/** The JSON Schemas that ship, by the name of their file. */
export const schemas: ReadonlyMap<string, JsonSchema> = new Map([
  ['feedplot-analysis.schema.json', whole('What `feedplot show --json` prints', analysisShape.schema)],
  ['feedplot-check.schema.json', whole('What `feedplot check --output json` prints', reportShape.schema)],
  ['feedplot-explain.schema.json', whole('What `feedplot explain --json` prints', { oneOf: explanations })],
  ['feedplot-review.schema.json', whole('What `feedplot review --output json` prints', reviewShape.schema)],
]);

function whole(title: string, schema: JsonSchema): JsonSchema {
  return { $schema: 'https://json-schema.org/draft/2020-12/schema', title, ...schema };
}
