import type { Analysis, Interface } from '../../analysis/model.ts';
import { formatFrequency, formatLength, formatLoss, formatRate } from '../../physics/display.ts';
import { workingsText } from '../workings/text.ts';
import { wrapDefinitions, wrapProse } from '../wrap.ts';
import { provenanceText, type ReachOnCable, reachesOf } from './interface-figures.ts';

/** An interface in words: its rate, what it takes, how far it goes and who says so. */
export function interfaceExplanation(analysis: Analysis, face: Interface, width: number): string[] {
  const { settings, interfaces } = analysis;
  const { name, signal, statement } = face;
  const { fact, label, description } = statement;
  const takenBy = [...interfaces.values()].filter((one) => one !== face && one.accepts.includes(face));
  const reaches = reachesOf(analysis, face);
  return [
    label === undefined ? name : `${name}, ${label}`,
    ...(description === undefined ? [] : ['', ...wrapProse(description, width)]),
    '',
    ...wrapDefinitions(
      [
        ['Signal', signal],
        ['Rate', fact.rate_bits_per_second === undefined ? '' : formatRate(fact.rate_bits_per_second)],
        ['Character rate', fact.clock_hz === undefined ? '' : formatFrequency(fact.clock_hz)],
        [
          'Lanes',
          fact.lanes === undefined
            ? ''
            : `${fact.lanes.count} of ${formatRate(fact.lanes.rate_bits_per_second)}`,
        ],
        ['Takes also', namesOf(face.accepts.filter((one) => one !== face))],
        ['Taken by', namesOf(takenBy)],
      ],
      width,
    ),
    ...fact.budgets.map((budget) => {
      const at = budget.frequency_hz === undefined ? '' : ` at ${formatFrequency(budget.frequency_hz)}`;
      return `Loss allowed: ${formatLoss(budget.loss_db)}${at} (${provenanceText(budget)})`;
    }),
    ...reachLines('How far it goes over each cable:', reaches, ({ cable }) => cable.name, settings.units),
  ];
}

/** Reaches one below the other, and how those were got that are not stated. */
export function reachLines(
  title: string,
  reaches: readonly ReachOnCable[],
  nameOf: (reach: ReachOnCable) => string,
  units: 'metric' | 'feet',
): string[] {
  if (reaches.length === 0) return [];
  const workings = reaches.flatMap(({ working }) => working ?? []);
  return [
    '',
    title,
    ...reaches.map((reach) => `  ${nameOf(reach)}: ${reachText(reach, units)} (${provenanceText(reach)})`),
    ...(workings.length === 0 ? [] : ['', 'How the computed ones were got:', '', ...workingsText(workings)]),
  ];
}

/** `55 m, good to 37 m`; with the loss allowed on fibre. */
function reachText({ length_m, good_m, loss_db }: ReachOnCable, units: 'metric' | 'feet'): string {
  const good = good_m === undefined ? '' : `, good to ${formatLength(good_m, units)}`;
  const loss = loss_db === undefined ? '' : `, at most ${formatLoss(loss_db)}`;
  return formatLength(length_m, units) + good + loss;
}

function namesOf(interfaces: readonly Interface[]): string {
  return interfaces.map(({ name }) => name).join(', ');
}
