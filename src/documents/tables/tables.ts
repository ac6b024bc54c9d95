import type { Analysis } from '../../analysis/model.ts';
import type { Table } from '../text-table.ts';
import { feedsTable } from './feeds.ts';
import { linksTable } from './links.ts';
import { nodesTable } from './nodes.ts';
import { sourcesTable } from './sources.ts';

/** Every table by the name that a person asks for. */
export const tables: ReadonlyMap<string, (analysis: Analysis) => Table> = new Map([
  ['links', linksTable],
  ['feeds', feedsTable],
  ['sources', sourcesTable],
  ['nodes', nodesTable],
]);
