import type { SoundMatch } from '../../analysis/model.ts';
import { figure, number, object, oneOf, orNull, text, type ValueOf, yesNo } from './schema.ts';

export const soundShape = object('Picture against sound, where it is said when the sound is heard', {
  destination: text('Where it is watched'),
  segment: orNull(text('Name of the segment; null: without segments')),
  picture_s: number('When the picture is seen, in seconds after it was made'),
  sound_s: number('When the sound is heard, in seconds after it was made'),
  offset_s: number('How late the sound is, in seconds; negative when it is early'),
  rule: oneOf('The rule by which it is judged', ['bt1359', 'r37', 'is191']),
  ok: yesNo('False where it is an error'),
  delay_to_set_s: number('The delay to give the sound so that they meet, in seconds'),
});

export function soundJson(match: SoundMatch): ValueOf<typeof soundShape> {
  return {
    destination: match.destination.name,
    segment: match.segment?.name ?? null,
    picture_s: figure(match.picture_s),
    sound_s: figure(match.sound_s),
    offset_s: figure(match.offset_s),
    rule: match.rule,
    ok: match.ok,
    delay_to_set_s: figure(match.delayToSet_s),
  };
}
