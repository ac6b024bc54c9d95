import type { Analysis, Interface } from '../../analysis/model.ts';
import type { Provenance } from '../../plan/facts.ts';
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
import { type ReachOnCable, reachesOf } from './interface-figures.ts';

export const provenanceShapes = {
  source: orNull(text('Where the value comes from, as stated')),
  from_memory: yesNo('Whether the value was written from memory: verify before relying on it'),
};

export const reachShape = object('How far an interface goes over a cable', {
  interface: text('Name of the interface'),
  cable: text('Name of the cable'),
  reach_m: number('The longest that it may be, in metres'),
  good_m: orNull(number('Up to here without doubt, in metres; null: up to the longest')),
  loss_limit_db: orNull(number('The greatest loss of the channel, in dB')),
  computed: yesNo('Whether the reach follows from what the cable loses; else it is stated'),
  ...provenanceShapes,
});

/** What `feedplot explain INTERFACE --json` prints. */
export const interfaceExplanationShape = object('What an interface is', {
  schema: whole('Version of this shape: 1'),
  kind: oneOf('What is explained', ['interface']),
  name: text('Its name'),
  label: orNull(text('What people call it')),
  description: orNull(text('What is said about it')),
  signal: oneOf('What rides on it', ['sdi', 'display', 'network', 'sound', 'unknown']),
  rate_bits_per_second: orNull(whole('Its line rate')),
  character_rate_hz: orNull(number('Its highest TMDS character rate')),
  accepts: list('Interfaces that a socket of it takes too', text('Name of an interface')),
  budgets: list(
    'Losses that its receiver makes good',
    object('A loss', {
      loss_db: number('In dB'),
      frequency_hz: orNull(number('At this frequency')),
      ...provenanceShapes,
    }),
  ),
  reaches: list('How far it goes over each cable', reachShape),
});

export function interfaceExplanationJson(
  analysis: Analysis,
  face: Interface,
): ValueOf<typeof interfaceExplanationShape> {
  const { fact, label, description } = face.statement;
  return {
    schema: 1,
    kind: 'interface',
    name: face.name,
    label: label ?? null,
    description: description ?? null,
    signal: face.signal,
    rate_bits_per_second: fact.rate_bits_per_second ?? null,
    character_rate_hz: fact.clock_hz ?? null,
    accepts: face.accepts.filter((one) => one !== face).map((one) => one.name),
    budgets: fact.budgets.map((budget) => ({
      loss_db: budget.loss_db,
      frequency_hz: budget.frequency_hz ?? null,
      ...provenanceJson(budget),
    })),
    reaches: reachesOf(analysis, face).map(reachJson),
  };
}

export function reachJson(reach: ReachOnCable): ValueOf<typeof reachShape> {
  return {
    interface: reach.interface.name,
    cable: reach.cable.name,
    reach_m: figure(reach.length_m),
    good_m: figure(reach.good_m),
    loss_limit_db: figure(reach.loss_db),
    computed: reach.working !== undefined,
    ...provenanceJson(reach),
  };
}

export function provenanceJson({ source, fromMemory }: Provenance) {
  return { source: source ?? null, from_memory: fromMemory };
}
