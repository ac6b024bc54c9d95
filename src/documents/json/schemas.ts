import { formatExplanationShape } from '../explain/format-json.ts';
import { reportShape } from '../findings/json.ts';
import { analysisShape } from './analysis.ts';
import type { JsonSchema, Shape } from './schema.ts';

/** The JSON Schemas that ship, by the name of their file. */
export const schemas: ReadonlyMap<string, JsonSchema> = new Map([
  ['feedplot-analysis.schema.json', whole('Analysis of a plan', analysisShape)],
  ['feedplot-check.schema.json', whole('Findings of a check', reportShape)],
  ['feedplot-format.schema.json', whole('Explanation of a format', formatExplanationShape)],
]);

function whole(title: string, { schema }: Shape<unknown>): JsonSchema {
  return { $schema: 'https://json-schema.org/draft/2020-12/schema', title, ...schema };
}
