import type { Analysis, Cable } from '../../analysis/model.ts';
import {
  formatFrequency,
  formatLoss,
  formatNumber,
  formatResistance,
  formatShare,
  formatTime,
} from '../../physics/display.ts';
import type { CableLossFact } from '../../plan/facts.ts';
import { wrapDefinitions, wrapProse } from '../wrap.ts';
import { provenanceText, reachesOver } from './interface-figures.ts';
import { reachLines } from './interface-text.ts';

const METRES = 100;

/** A cable in words: what it is, what it loses, what runs over it how far, and who says so. */
export function cableExplanation(analysis: Analysis, cable: Cable, width: number): string[] {
  const { name, statement, medium, screened, strandedShare, losses, knownAs } = cable;
  const { label, description } = statement;
  const per100 = (value: number | undefined, show: (one: number) => string) =>
    value === undefined ? '' : `${show(value * METRES)} in ${METRES} m`;
  return [
    label === undefined ? name : `${name}, ${label}`,
    ...(description === undefined ? [] : ['', ...wrapProse(description, width)]),
    '',
    ...wrapDefinitions(
      [
        ['Medium', screened ? `${medium}, screened` : medium],
        ['Like', knownAs.slice(1).join(', ')],
        ['Stranded', strandedShare === undefined ? '' : `${formatShare(strandedShare)} more loss than solid`],
        ['Delay', per100(cable.delay_s_per_m, formatTime)],
        ['Weight', per100(cable.weight_kg_per_m, (kg) => `${formatNumber(kg, 1)} kg`)],
        ['Resistance', per100(cable.resistance_ohm_per_m, formatResistance)],
      ],
      width,
    ),
    ...(losses.length === 0 ? [] : ['', `Loss in ${METRES} m:`]),
    ...losses.map(
      (loss) => `  ${formatLoss(loss.loss_db_per_m * METRES)}${atText(loss)} (${provenanceText(loss)})`,
    ),
    ...reachLines(
      'What runs over it, and how far:',
      reachesOver(analysis, cable),
      (reach) => reach.interface.name,
      analysis.settings.units,
    ),
  ];
}

function atText({ frequency_hz, wavelength_m }: CableLossFact): string {
  if (frequency_hz !== undefined) return ` at ${formatFrequency(frequency_hz)}`;
  return wavelength_m === undefined ? '' : ` at ${formatNumber(wavelength_m * 1e9, 0)} nm`;
}
