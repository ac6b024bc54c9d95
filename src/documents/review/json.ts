import type { Finding } from '../../checks/finding.ts';
import { findingJson, findingShape } from '../findings/json.ts';
import { locateFindings, type NameOf } from '../findings/located.ts';
import {
  figure,
  list,
  number,
  object,
  oneOf,
  orNull,
  rounded,
  text,
  type ValueOf,
  whole,
  yesNo,
} from '../json/schema.ts';
import {
  coverChangeKinds,
  coverStates,
  type LoadState,
  loadChangeKinds,
  type Named,
  type PictureState,
  pictureChangeKinds,
  purchaseKinds,
  type ReachState,
  type Review,
  type ReviewPlace,
  reachChangeKinds,
  stepKinds,
  thingChangeKinds,
  totalKinds,
} from './review.ts';

const placeShape = object('Where it stands in the text', {
  side: oneOf('old: in the text before the change, because it is gone since', ['old', 'new']),
  file: text('Name of the file'),
  line: whole('First line, from 1'),
  column: whole('First column, from 1, in UTF-16 units'),
  end_line: whole('Last line, from 1'),
  end_column: whole('The column behind the last, from 1, in UTF-16 units'),
});

const named = (description: string) =>
  object(description, {
    name: text('Its name in the plan; of what is gone, in the plan before'),
    title: text('What people call it: its label, or its name'),
  });

const segmentShape = orNull(named('The segment in which it holds; null: whenever no segment differs'));
const titles = (description: string) => list(description, text('What people call it'));

const planShape = object('One of the two plans', {
  name: text('What it is called: a file, a revision'),
  revision: orNull(text('Its revision, as the plan states it')),
  unreadable: whole('Places of its text that could not be read; what stands there is not compared'),
});

const pictureStateShape = orNull(
  object('What is seen there; null: nothing', {
    source: named('The picture'),
    way: list('The cables that it rides, one after another', named('A cable')),
    delay_s: orNull(number('From where the picture begins to where it is seen')),
    delay_limit_s: orNull(number('The greatest delay allowed')),
    over: yesNo('Over its limit'),
  }),
);

const loadStateShape = orNull(
  object('At its worst over all segments; null: the link is not there', {
    load_bits_per_second: whole('Every bit that occupies the wire one way'),
    capacity_bits_per_second: orNull(whole('Line rate of the link one way')),
    share: orNull(number('Load of capacity; 1 is full')),
    segment: segmentShape,
  }),
);

const reachStateShape = object('How far the cable goes, and may go', {
  length_m: orNull(number('Its length')),
  reach_m: orNull(number('At most so long')),
  share: orNull(number('How much of what is allowed is used, by length or loss; 1 is the limit')),
  verdict: text('good, near the limit, doubtful, beyond or not known'),
});

/** What `feedplot review --output json` prints. */
export const reviewShape = object('What a change of a plan does to the show', {
  schema: whole('Version of this shape: 1'),
  title: text('The title of the plan'),
  old: planShape,
  new: planShape,
  merge: orNull(
    object('Only of a merge: what it brings by itself', {
      parents: list('The histories that were merged', text('A revision')),
      findings: list('Findings that none of them has alone; they stand among the new ones too', findingShape),
    }),
  ),
  new_findings: list('Findings that the change brings, the most serious first', findingShape),
  mended_findings: list('Findings that it mends; their places are in the old text', findingShape),
  accepted: list('Findings that the crew accepts now', findingShape),
  no_longer_accepted: list('Findings that were accepted before', findingShape),
  pictures: list(
    'Where another picture is seen, or none, or the same another way or at another time; the worst first',
    object('A destination or an input', {
      change: oneOf('What becomes of it', pictureChangeKinds),
      name: text('Name of the destination, or `node.port`'),
      title: text('What people call it'),
      segment: segmentShape,
      before: pictureStateShape,
      after: pictureStateShape,
      place: placeShape,
    }),
  ),
  loads: list(
    'Network links that carry more or less one way; the fullest first',
    object('One direction of a link', {
      change: oneOf('Whether it is new, gone, fuller or emptier', loadChangeKinds),
      name: text('Name of the link'),
      title: text('What people call it'),
      direction: oneOf('forward: from the first end to the second, as the link is written', [
        'forward',
        'backward',
      ]),
      from: text('The socket that sends'),
      to: text('The socket that receives'),
      before: loadStateShape,
      after: loadStateShape,
      gains: list('Pictures that it carries in any segment and did not before', named('A picture')),
      loses: list('Pictures that it no longer carries', named('A picture')),
      place: placeShape,
    }),
  ),
  lengths: list(
    'Cables with less or more margin to what they may be at most; the nearest to it first',
    object('A cable', {
      change: oneOf('Whether it has less margin or more', reachChangeKinds),
      name: text('Name of the link'),
      title: text('What people call it'),
      before: reachStateShape,
      after: reachStateShape,
      place: placeShape,
    }),
  ),
  cover: list(
    'Pictures that a failure hurts more than before, or less; the worst first',
    object('A feed', {
      change: oneOf('Whether it is safer or less safe', coverChangeKinds),
      name: text('`source -> destination`'),
      title: text('The picture, and where it is seen'),
      segment: segmentShape,
      before: oneOf('What became of it when one of these failed', coverStates),
      after: oneOf('What becomes of it now', coverStates),
      losses: list('Any of which, lost alone, does that', named('A cable, a box or a run')),
      place: placeShape,
    }),
  ),
  totals: list(
    'Sums that differ',
    object('A sum', {
      what: oneOf(
        'cost in the currency of the plan; weight of all cases and of one case in kg; power in all and of one circuit in W',
        totalKinds,
      ),
      name: text('Name of the circuit or case; empty for sums over the plan'),
      title: text('What people call it'),
      before: orNull(number('Null: it was not there')),
      after: orNull(number('Null: it is gone')),
      limit: orNull(number('At most so much')),
    }),
  ),
  currency: orNull(text('As the plan states it')),
  purchases: list(
    'Pieces of cable that are not at hand',
    object('Pieces of one kind and length', {
      change: oneOf('Whether they have to be got, or no longer', purchaseKinds),
      name: text('Name of the cable'),
      title: text('What people call it'),
      length_m: orNull(number('At least so long')),
      count: whole('How many'),
    }),
  ),
  things: list(
    'What was added, removed, renamed, moved or changed in the text, in its order',
    object('A statement, or one wish of several', {
      change: oneOf('What became of it', thingChangeKinds),
      kind: text('What it is: node, link, feed, …'),
      name: text('Its name, or its ends'),
      title: text('What people call it'),
      was: orNull(text('Its name before, when that was another')),
      differences: list(
        'Property by property',
        object('A property, in words', {
          what: text('Its name'),
          before: orNull(text('Null: nothing was said')),
          after: orNull(text('Null: nothing is said')),
        }),
      ),
      place: placeShape,
    }),
  ),
  steps: list(
    'What to do on site, in an order in which no running picture goes dark unless it must',
    object('A step', {
      kind: oneOf('What hands do', stepKinds),
      place: text('Where'),
      text: text('The step in words'),
      cable: orNull(
        object('The cable that is handled', {
          title: text('What is written on it, or its ends'),
          kind: text('Kind of cable'),
          length_m: orNull(number('Its length')),
        }),
      ),
      sockets: list(
        'The sockets that are handled',
        object('A socket', {
          place: text('Where the box stands'),
          box: text('The box'),
          socket: orNull(text('What is written at the socket; null: it has one connector')),
        }),
      ),
      dark: titles('Where a running picture goes dark with this step'),
      back: titles('Where a picture comes back'),
      ends: titles('Where a picture ends, as planned'),
    }),
  ),
  cautions: list('What hands have to know before they begin', text('A caution')),
});

export function reviewJson(review: Review, nameOf: NameOf): ValueOf<typeof reviewShape> {
  const findings = (all: readonly Finding[]) =>
    all.map((one) => findingJson(locateFindings([one], [], nameOf)[0]!));
  const place = (one: ReviewPlace) => placeJson(one, nameOf);
  return {
    schema: 1,
    title: review.title,
    old: planJson(review.old),
    new: planJson(review.new),
    merge: review.merge ? { parents: review.merge.parents, findings: findings(review.merge.findings) } : null,
    new_findings: findings(review.newFindings),
    mended_findings: findings(review.mendedFindings),
    accepted: findings(review.acceptedFindings.map(({ finding }) => finding)),
    no_longer_accepted: findings(review.noLongerAccepted.map(({ finding }) => finding)),
    pictures: review.pictures.map((change) => ({
      ...plainName(change),
      change: change.change,
      segment: change.segment,
      before: pictureJson(change.before),
      after: pictureJson(change.after),
      place: place(change.place),
    })),
    loads: review.loads.map((change) => ({
      ...plainName(change),
      change: change.change,
      direction: change.direction,
      from: change.from,
      to: change.to,
      before: loadJson(change.before),
      after: loadJson(change.after),
      gains: change.gains,
      loses: change.loses,
      place: place(change.place),
    })),
    lengths: review.reaches.map((change) => ({
      ...plainName(change),
      change: change.change,
      before: reachJson(change.before),
      after: reachJson(change.after),
      place: place(change.place),
    })),
    cover: review.cover.map(({ change, segment, before, after, losses, ...one }) => ({
      ...plainName(one),
      change,
      segment,
      before,
      after,
      losses,
      place: place(one.place),
    })),
    totals: review.totals.map((total) => ({
      ...plainName(total),
      what: total.what,
      before: figure(total.before),
      after: figure(total.after),
      limit: figure(total.limit),
    })),
    currency: review.currency ?? null,
    purchases: review.purchases.map((purchase) => ({
      ...plainName(purchase),
      change: purchase.change,
      length_m: figure(purchase.length_m),
      count: purchase.count,
    })),
    things: review.things.map((thing) => ({
      ...plainName(thing),
      change: thing.change,
      kind: thing.kind,
      was: thing.was ?? null,
      differences: thing.differences.map(({ what, before, after }) => ({
        what,
        before: before ?? null,
        after: after ?? null,
      })),
      place: place(thing.place),
    })),
    steps: review.steps.map(({ cable, sockets, ...step }) => ({
      ...step,
      cable: cable && { ...cable, length_m: figure(cable.length_m) },
      sockets: sockets.map((one) => ({ ...one, socket: one.socket ?? null })),
    })),
    cautions: review.cautions,
  };
}

function plainName({ name, title }: Named): Named {
  return { name, title };
}

function planJson({ name, revision, unreadable }: Review['old']): ValueOf<typeof planShape> {
  return { name, revision: revision ?? null, unreadable };
}

function pictureJson(state: PictureState | undefined): ValueOf<typeof pictureStateShape> {
  if (!state) return null;
  const { source, way, delay_s, limit_s, over } = state;
  return {
    source,
    way,
    delay_s: figure(delay_s),
    delay_limit_s: figure(limit_s),
    over,
  };
}

function loadJson(state: LoadState | undefined): ValueOf<typeof loadStateShape> {
  if (!state) return null;
  return {
    load_bits_per_second: rounded(state.load_bits_per_second),
    capacity_bits_per_second: rounded(state.capacity_bits_per_second),
    share: figure(state.share),
    segment: state.segment,
  };
}

function reachJson({ length_m, reach_m, share, verdict }: ReachState): ValueOf<typeof reachStateShape> {
  return { length_m: figure(length_m), reach_m: figure(reach_m), share: figure(share), verdict };
}

function placeJson({ side, file, range }: ReviewPlace, nameOf: NameOf): ValueOf<typeof placeShape> {
  return {
    side,
    file: nameOf(file),
    line: range.line + 1,
    column: range.column + 1,
    end_line: range.endLine + 1,
    end_column: range.endColumn + 1,
  };
}
