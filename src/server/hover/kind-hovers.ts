/** Kinds of things and formats: what the library and the physics know of them. */
import type { Analysis, Cable, Interface } from '../../analysis/model.ts';
import { type FormatFigures, formatFigures } from '../../documents/explain/format-figures.ts';
import {
  provenanceText,
  type ReachOnCable,
  reachesOf,
  reachesOver,
} from '../../documents/explain/interface-figures.ts';
import { formatFrequency, formatLength, formatLoss, formatRate } from '../../physics/display.ts';
import { formatFormat, type StatedFormat } from '../../physics/raster.ts';
import { bold, code, description, lines, paragraphs, plain, table, workings } from './markdown.ts';

/** A cable: what it is, and how far each interface goes over it. */
export function cableHover(analysis: Analysis, cable: Cable): string {
  const { label, description: said } = cable.statement;
  const reaches = reachesOver(analysis, cable);
  return paragraphs(
    lines(
      `${bold(cable.name)} · ${plain(cable.medium)} cable${cable.screened ? ', screened' : ''}`,
      label && plain(label),
    ),
    reaches.length > 0 &&
      table(
        ['interface', 'reaches', 'source'],
        reaches.map((reach) => [
          code(reach.interface.name),
          reachText(reach, analysis.settings.units),
          plain(provenanceText(reach)),
        ]),
      ),
    cable.losses.length > 0 &&
      table(
        ['at', 'loses', 'source'],
        cable.losses.map(({ frequency_hz, loss_db_per_m, ...from }) => [
          frequency_hz === undefined ? 'any' : formatFrequency(frequency_hz),
          `${formatLoss(loss_db_per_m * 100)} per 100 m`,
          plain(provenanceText(from)),
        ]),
      ),
    description(said),
  );
}

/** An interface: its rate, what its sockets take, how far it goes. */
export function interfaceHover(analysis: Analysis, face: Interface): string {
  const { fact, label, description: said } = face.statement;
  const accepts = face.accepts.filter((one) => one !== face);
  const reaches = reachesOf(analysis, face);
  return paragraphs(
    lines(`${bold(face.name)} · ${plain(face.signal)} interface`, label && plain(label)),
    lines(
      fact.rate_bits_per_second !== undefined && `Rate ${formatRate(fact.rate_bits_per_second)}`,
      fact.clock_hz !== undefined && `Character rate up to ${formatFrequency(fact.clock_hz)}`,
      accepts.length > 0 && `Takes also ${plain(accepts.map(({ name }) => name).join(', '))}`,
      ...fact.budgets.map(
        (budget) =>
          `Loss allowed ${formatLoss(budget.loss_db)}${budget.frequency_hz === undefined ? '' : ` at ${formatFrequency(budget.frequency_hz)}`} (${plain(provenanceText(budget))})`,
      ),
    ),
    reaches.length > 0 &&
      table(
        ['cable', 'reaches', 'source'],
        reaches.map((reach) => [
          code(reach.cable.name),
          reachText(reach, analysis.settings.units),
          plain(provenanceText(reach)),
        ]),
      ),
    description(said),
  );
}

/** A format: what it asks of the network and of every interface, with the working. */
export function formatHover(analysis: Analysis, stated: StatedFormat): string {
  const figures = formatFigures(stated, analysis);
  const { format, loads, sdi_bits_per_second, sdiWays, characterRate_hz, workings: all } = figures;
  return paragraphs(
    bold(formatFormat(format)),
    lines(
      `On the network: ${bold(formatRate(loads.total_bits_per_second))}${fitsText(figures)}`,
      sdi_bits_per_second !== undefined &&
        `On SDI: ${formatRate(sdi_bits_per_second)}, ${plain(sdiWays.map(({ interface: { name }, links }) => (links === 1 ? name : `${links} × ${name}`)).join(', ') || 'too much for any')}`,
      characterRate_hz !== undefined &&
        `On a display link: ${formatFrequency(characterRate_hz)} character rate`,
    ),
    workings(all, 2),
  );
}

/** Interfaces of one rate fit the same number: told once by rate. */
function fitsText({ fits }: FormatFigures): string {
  const byRate = new Map(fits.map(({ interface: face, count }) => [face.rate_bits_per_second, count]));
  const texts = [...byRate].sort(([a], [b]) => a - b).filter(([, count]) => count > 0);
  return texts.length > 0
    ? `; one way fit ${texts.map(([rate, count]) => `${count} in ${formatRate(rate)}`).join(', ')}`
    : '';
}

/** `55 m, good to 37 m`; with the loss allowed on fibre. */
function reachText({ length_m, good_m, loss_db }: ReachOnCable, units: 'metric' | 'feet'): string {
  const good = good_m === undefined ? '' : `, good to ${formatLength(good_m, units)}`;
  const loss = loss_db === undefined ? '' : `, at most ${formatLoss(loss_db)}`;
  return formatLength(length_m, units) + good + loss;
}
