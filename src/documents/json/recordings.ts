import type { Recording } from '../../analysis/model.ts';
import { object, orNull, rounded, text, type ValueOf, whole } from './schema.ts';

export const recordingShape = object('A recording', {
  destination: text('What records'),
  bytes: orNull(whole('The storage that it needs; null while the plan does not say how long it lasts')),
});

export function recordingJson({ destination, bytes }: Recording): ValueOf<typeof recordingShape> {
  return { destination: destination.name, bytes: rounded(bytes) };
}
