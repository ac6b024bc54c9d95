import type { Delivery, Route } from '../../analysis/model.ts';
import { formatJson, formatShape } from './formats.ts';
import { figure, list, number, object, oneOf, orNull, text, type ValueOf, yesNo } from './schema.ts';

const routeShape = (description: string) =>
  list(description, text('A port, `box_d.in1`; the name of a source or destination'));

export const feedShape = object('A picture, to where it is wished, in one segment', {
  name: orNull(text('Feeds have no name of their own yet: null')),
  source: text('Name of the source'),
  destination: text('Name of the destination, or the input port, as written'),
  segment: orNull(text('Name of the segment; null: always')),
  route: orNull(routeShape('Every port on the way, the source first; null where there is no route')),
  routes: orNull(list('The two routes of a seamless feed; null for any other', routeShape('A route'))),
  links: list(
    'The cables on the way, in order; of a seamless feed those of its first route',
    text('Name of a link'),
  ),
  delay_s: orNull(number('From where the picture begins to the screen, in seconds')),
  delay_limit_s: orNull(number('The greatest delay allowed, in seconds')),
  delay_from: oneOf('Where the delay comes from', ['computed', 'measured']),
  planned_delay_s: orNull(number('What is computed, without a measurement, in seconds')),
  redundant: yesNo('Wished to survive any single loss'),
  seamless: yesNo('Sent in two copies at once'),
  proved: list('When it was seen on site', text('A date, `2027-05-14`; empty where none was written')),
  ...formatShape('as it arrives'),
});

export function feedJson({ feed, segment, routes, delay, format }: Delivery): ValueOf<typeof feedShape> {
  const [first] = routes;
  return {
    name: null,
    source: feed.sourceName,
    destination: feed.targetName,
    segment: segment?.name ?? null,
    route: first ? portsOf(first) : null,
    routes: feed.seamless ? routes.map(portsOf) : null,
    links: first?.steps.map((step) => step.link.name) ?? [],
    delay_s: figure(delay.delay_s),
    delay_limit_s: figure(delay.limit_s),
    delay_from: delay.from,
    planned_delay_s: figure(delay.computed_s),
    redundant: feed.redundant,
    seamless: feed.seamless,
    proved: feed.proofs.map(({ fact }) => fact.date ?? ''),
    ...formatJson(format),
  };
}

function portsOf(route: Route): string[] {
  return route.ports.map((port) => port.text);
}
