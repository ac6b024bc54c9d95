import type { Analysis } from '../../analysis/model.ts';
import type { Table } from '../text-table.ts';
import { addressTables } from './addresses.ts';
import { cableTables } from './cables.ts';
import { caseTables } from './cases.ts';
import { costTable } from './cost.ts';
import { failuresTable } from './failures.ts';
import { feedsTable } from './feeds.ts';
import { linksTable } from './links.ts';
import { firmwareTable, nodesTable } from './nodes.ts';
import { powerTables } from './power.ts';
import { recordingsTable } from './recordings.ts';
import { soundTable } from './sound.ts';
import { sourcesTable } from './sources.ts';
import { uplinksTable } from './uplinks.ts';

/** Every table by the name that a person asks for; some are several, the main one first. */
export const tables: ReadonlyMap<string, (analysis: Analysis) => readonly Table[]> = new Map([
  ['links', one(linksTable)],
  ['feeds', one(feedsTable)],
  ['sources', one(sourcesTable)],
  ['nodes', (analysis) => [nodesTable(analysis), firmwareTable(analysis)]],
  ['power', powerTables],
  ['uplinks', one(uplinksTable)],
  ['sound', one(soundTable)],
  ['recordings', one(recordingsTable)],
  ['addresses', addressTables],
  ['cables', cableTables],
  ['cost', one(costTable)],
  ['cases', caseTables],
  ['failures', one(failuresTable)],
]);

/** What is shown when nobody asks for a table. */
export const overview: readonly string[] = ['links', 'feeds', 'sources', 'nodes'];

function one(table: (analysis: Analysis) => Table): (analysis: Analysis) => readonly Table[] {
  return (analysis) => [table(analysis)];
}
