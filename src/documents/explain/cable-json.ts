import type { Analysis, Cable } from '../../analysis/model.ts';
import {
  figure,
  list,
  number,
  object,
  oneOf,
  orNull,
  text,
  type ValueOf,
  whole,
  yesNo,
} from '../json/schema.ts';
import { reachesOver } from './interface-figures.ts';
import { provenanceJson, provenanceShapes, reachJson, reachShape } from './interface-json.ts';

/** What `feedplot explain CABLE --json` prints. */
export const cableExplanationShape = object('What a cable is', {
  schema: whole('Version of this shape: 1'),
  kind: oneOf('What is explained', ['cable']),
  name: text('Its name'),
  label: orNull(text('What people call it')),
  description: orNull(text('What is said about it')),
  medium: text('What it is made of: coax, twisted pair, fibre, display, sound'),
  screened: yesNo('Whether it has a screen'),
  like: list('Cables whose values it has where it states none, the nearest first', text('Name of a cable')),
  losses: list(
    'Losses as stated',
    object('A loss', {
      loss_db_per_m: number('In dB per metre'),
      frequency_hz: orNull(number('At this frequency')),
      wavelength_m: orNull(number('At this wavelength')),
      ...provenanceShapes,
    }),
  ),
  delay_s_per_m: orNull(number('How long a metre takes, in seconds')),
  weight_kg_per_m: orNull(number('What a metre weighs')),
  resistance_ohm_per_m: orNull(number('Resistance of a metre of one conductor')),
  reaches: list('What runs over it and how far', reachShape),
});

export function cableExplanationJson(
  analysis: Analysis,
  cable: Cable,
): ValueOf<typeof cableExplanationShape> {
  const { label, description } = cable.statement;
  return {
    schema: 1,
    kind: 'cable',
    name: cable.name,
    label: label ?? null,
    description: description ?? null,
    medium: cable.medium,
    screened: cable.screened,
    like: cable.knownAs.slice(1),
    losses: cable.losses.map((loss) => ({
      loss_db_per_m: figure(loss.loss_db_per_m),
      frequency_hz: loss.frequency_hz ?? null,
      wavelength_m: loss.wavelength_m ?? null,
      ...provenanceJson(loss),
    })),
    delay_s_per_m: figure(cable.delay_s_per_m),
    weight_kg_per_m: figure(cable.weight_kg_per_m),
    resistance_ohm_per_m: figure(cable.resistance_ohm_per_m),
    reaches: reachesOver(analysis, cable).map(reachJson),
  };
}
