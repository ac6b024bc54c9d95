/** How far a cable reaches, in the words that all checks of lengths share. */
import type { Analysis, Chain, Reach } from '../analysis/model.ts';
import { formatFrequency, formatLoss, formatTemperature } from '../physics/display.ts';
import { counted, interfaceText, lengthText, linkStart, listed, shown } from './words.ts';

/** `trunk is 86 m of cat6a`, `tie_1 and the 2 cables joined to it are 71 m`. */
export function chainLengthText(analysis: Analysis, { links, length_m }: Chain, reach: Reach): string {
  const [link, ...joined] = links;
  if (!link || length_m === undefined) return '';
  const length = lengthText(analysis, length_m, reach.decidedBy === 'length' ? reach.reach_m : undefined);
  const cables = [...new Set(links.flatMap(({ cable }) => (cable ? [cable.name] : [])))];
  if (joined.length === 0) return `${linkStart(link)} is ${length} of ${listed(cables)}`;
  return `${linkStart(link)} and the ${counted(joined.length, 'cable')} joined to it are ${length} of ${listed(cables)}`;
}

/** What is allowed, and by what: `10GBASE-T reaches 55 m over it`, `3G-SDI may lose 20 dB and it loses 22.4 dB`. */
export function allowedText(analysis: Analysis, reach: Reach): string {
  const { judgedAs, reach_m, loss_db, loss_limit_db, frequency_hz, temperature_c } = reach;
  const face = judgedAs ? interfaceText(judgedAs) : 'what runs on it';
  const warm = temperature_c === undefined ? '' : `, at ${formatTemperature(temperature_c)}`;
  const at = frequency_hz === undefined ? '' : ` at ${formatFrequency(frequency_hz)}`;
  const byLoss = loss_db !== undefined && loss_limit_db !== undefined && reach.decidedBy === 'loss';
  const far = reach_m === undefined ? '' : `reaches ${lengthText(analysis, reach_m)}`;
  if (!byLoss) return `${face} ${far === '' ? 'does not reach so far' : `${far} over it`}${warm}`;
  const loses = `it loses ${formatLoss(loss_db, loss_limit_db)} of the ${formatLoss(loss_limit_db)} that ${face} allows${at}${warm}`;
  return far === '' ? loses : `${loses} (${far})`;
}

/** A remark where the value that decides is only remembered. */
export function memoryText({ fromMemory, source }: Reach): string {
  if (!fromMemory) return '';
  return ` That limit is from memory${source === undefined ? '' : ` (${shown(source)})`}: look it up.`;
}
