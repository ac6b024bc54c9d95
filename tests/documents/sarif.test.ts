// SARIF 2.1.0, OASIS Standard of 27 March 2020, its JSON schema (rtm.5); see sarif/LICENSE.txt for where the copy is from.
import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.ts';
import { catalogue } from '../../src/checks/catalogue.ts';
import { findingsOf } from '../../src/checks/findings.ts';
import { locateFindings } from '../../src/documents/findings/located.ts';
import { findingsSarif } from '../../src/documents/findings/sarif.ts';
import { assembledOf } from '../support/plans.ts';
import { plansBelow } from '../support/shipped-plans.ts';

const validate = compile(`${import.meta.dirname}/sarif/sarif-2.1.0-rtm.5.json`);

/** The schema is of draft 4: what it has that draft 7 has not is its `id` and nothing more. */
function compile(path: string) {
  const { id: _, $schema, ...schema } = JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>;
  expect($schema).toBe('http://json-schema.org/draft-04/schema#');
  expect(JSON.stringify(schema)).not.toMatch(/"exclusiveM(in|ax)imum":(true|false)/);
  const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
  // RFC 3986: what these characters are, and a colon only behind a scheme.
  const uriReference = /^(?:[a-z][a-z0-9+.-]*:)?(?:[\w\-.~!$&'()*+,;=@/?#[\]]|%[0-9a-f]{2})*$/i;
  ajv.addFormat('uri', (text: string) => /^[a-z][a-z0-9+.-]*:/i.test(text) && URL.canParse(text));
  ajv.addFormat('uri-reference', uriReference);
  ajv.addFormat('date-time', (text: string) => !Number.isNaN(Date.parse(text)));
  return ajv.compile(schema);
}

function sarifOf(files: string | Record<string, string>, nameOf: (uri: string) => string): unknown {
  const { plan, unreadables } = assembledOf(files);
  const findings = findingsOf(analyse(plan), unreadables);
  const located = locateFindings(findings, plan.files, nameOf);
  return JSON.parse(JSON.stringify(findingsSarif(located, catalogue, '1.2.3')));
}

function faults(log: unknown): unknown[] {
  return validate(log)
    ? []
    : (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

describe('what `check --output sarif` prints is valid', () => {
  test.each(plansBelow('examples'))('%s', (name) => {
    const text = readFileSync(name, 'utf8');
    expect(faults(sarifOf(text, () => 'shows/größe (2).feedplot'))).toEqual([]);
  });

  test('without a finding', () => {
    expect(faults(JSON.parse(JSON.stringify(findingsSarif([], catalogue, '1'))))).toEqual([]);
  });

  test('with names that are no URI, and control characters', () => {
    const log = sarifOf('plan "x\u0007"\nfeed a -> b\nlink "\u202e', () => 'a b/ü%[1]#?:c.feedplot');
    expect(faults(log)).toEqual([]);
  });

  test('and the schema is asked in earnest: a log without a version, a level that is none, a column of 0', () => {
    const log = sarifOf('feed a -> b\n', () => 'a.feedplot') as {
      version?: string;
      runs: {
        results: { level: string; locations: { physicalLocation: { region: { startColumn: number } } }[] }[];
      }[];
    };
    const [result] = log.runs[0]!.results;
    result!.level = 'fatal';
    result!.locations[0]!.physicalLocation.region.startColumn = 0;
    delete log.version;
    expect(faults(log)).toHaveLength(3);
  });
});
