/** Smaller formats of a source that fit an interface. */
import { FormatTable } from '../../analysis/formats.ts';
import type { Analysis, Interface, Source } from '../../analysis/model.ts';
import type { Fix } from '../finding.ts';

/** Rasters that productions use, the largest first; common practice, no source. */
const RASTERS: readonly string[] = ['2160', '1080', '720'];

/** Offers the next smaller picture at the same rate that goes through. */
export function smallerFormatFixes(
  { settings }: Analysis,
  { statement }: Source,
  face: Interface,
): readonly Fix[] {
  const { text, raster } = statement.fact.format ?? {};
  const [, rows = '', rest = ''] = /^(?:\d+x)?(\d+)(p.*)$/.exec(raster ?? '') ?? [];
  if (text === undefined || raster === undefined) return [];
  const table = new FormatTable(settings.tagged, settings.blanking);
  for (const smaller of RASTERS.filter((one) => Number(one) < Number(rows))) {
    const changed = text.replace(raster, `${smaller}${rest}`);
    const stated = table.stated({ ...statement.fact.format, text: changed });
    const known = stated && table.complete(stated, face.signal);
    if (!known || table.misfit(known, face)) continue;
    return [
      {
        title: `Send ${smaller}${rest}, which fits`,
        edits: [{ kind: 'replace', statement, part: 'formats/0', text: changed }],
      },
    ];
  }
  return [];
}
