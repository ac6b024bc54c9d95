import type { SourceFigures } from '../analysis/model.ts';
import { formatFrameRate } from '../physics/rate.ts';
import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import type { Fix } from './finding.ts';
import { shown } from './words.ts';

export const rateDiffers: Check = {
  name: 'rate-differs',
  severity: 'warning',
  summary: 'A source does not have the house rate.',
  explanation: `Pictures of different rates cannot be mixed without a converter: a mixer shows such an input with a jump
every second, or not at all. 60 and 59.94 are different rates.

**How it is judged.** The rate of what the source sends against the plan's \`rate\`: frames a second, and for interlaced
pictures fields or frames. Rates are compared exactly (59.94 means 60000/1001).

**What mends it.** The house rate at the source, or a rate converter; where an input converts by itself, accept the
finding with that reason.`,
  examples: [
    {
      wrong: changedPlan('sends 1080p50', 'sends 1080p60').replace('takes 1080p50', 'takes 1080p60, 1080p50'),
      right: smallPlan(),
    },
  ],

  find({ sourceFigures, settings }, report) {
    const { rate } = settings;
    if (!rate) return;
    const house = formatFrameRate(rate);
    for (const figures of sourceFigures.values()) {
      if (!figures.rateDiffers) continue;
      const { statement, name } = figures.source;
      const stated = statement.fact.format?.text;
      report({
        statement,
        part: stated === undefined ? 'name' : 'formats/0',
        subject: name,
        message: `${shown(name)} sends ${stated ?? 'another rate'}; the house rate is ${house}. Let it send the house rate, convert it, or accept it with the input that converts it.`,
        related: settings.statement
          ? [{ place: { statement: settings.statement, part: 'rates/0' }, message: 'The house rate.' }]
          : [],
        fixes: () => houseRateFix(figures, house),
      });
    }
  },
};

/** The same picture at the house rate; interlaced ones count fields, so a person has to say what is meant. */
function houseRateFix({ source }: SourceFigures, house: string): readonly Fix[] {
  const { statement } = source;
  const { text, raster } = statement.fact.format ?? {};
  const changed = raster?.replace(/p[\d.]+$/, `p${house}`);
  if (text === undefined || raster === undefined || changed === undefined || changed === raster) return [];
  return [
    {
      title: `Send ${changed}`,
      edits: [{ kind: 'replace', statement, part: 'formats/0', text: text.replace(raster, changed) }],
    },
  ];
}
