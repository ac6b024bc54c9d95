import type { Group } from '../../analysis/model.ts';
import { object, orNull, text, type ValueOf } from './schema.ts';

export const groupShape = object('The multicast group of a source', {
  source: text('Name of the source'),
  group: orNull(text('Its address; null where the prefix has no place left')),
  hardware_address: orNull(text('What the group is on the wire: 01-00-5E-0A-00-07')),
});

export function groupJson({ source, group, hardwareAddress }: Group): ValueOf<typeof groupShape> {
  return { source: source.name, group: group ?? null, hardware_address: hardwareAddress ?? null };
}
