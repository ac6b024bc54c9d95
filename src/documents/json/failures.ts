import type { Delivery, Failure } from '../../analysis/model.ts';
import { list, object, oneOf, orNull, text, type ValueOf } from './schema.ts';

const feeds = (description: string) => list(description, text('`source -> destination`, as written'));
const links = (description: string) => list(description, text('Name of a link'));

export const failureShape = object('What happens when one thing is lost, in one segment', {
  kind: oneOf('What is lost: a cable with everything in its sheath, a box, all cables of a run', [
    'link',
    'node',
    'run',
  ]),
  name: text('Its name; of a run the two places as written: `desk <-> platform`'),
  segment: orNull(
    text('Name of the segment; null: without segments, and in every segment that does not stand here itself'),
  ),
  dark: feeds('Feeds that go dark and stay dark'),
  kept: feeds('Feeds that it concerns and that are seen again, some of them once standbys are plugged'),
  overloaded: links('Links that then carry more than they can'),
  links: links('Every cable that is lost with it'),
  standbys: links('Standbys to plug for it'),
  after_replugging: feeds('Those of the kept feeds that wait for a standby to be plugged'),
});

export function failureJson(failure: Failure): ValueOf<typeof failureShape> {
  return {
    kind: failure.kind,
    name: failure.lost.name,
    segment: failure.segment?.name ?? null,
    dark: failure.dark.map(feedName),
    kept: failure.kept.map(feedName),
    overloaded: failure.overloaded.map(({ name }) => name),
    links: failure.links.map(({ name }) => name),
    standbys: failure.standbys.map(({ name }) => name),
    after_replugging: failure.afterReplugging.map(feedName),
  };
}

function feedName({ feed }: Delivery): string {
  return feed.name;
}
