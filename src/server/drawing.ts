import { AstUtils, CstUtils, type LangiumDocument, URI } from 'langium';
import type { CancellationToken, Connection } from 'vscode-languageserver';
import { analyse } from '../analysis/analyse.ts';
import type { Analysis } from '../analysis/model.ts';
import { makingScene } from '../documents/drawing/make-scene.ts';
import { nameText } from '../documents/drawing/words.ts';
import { Titles } from '../documents/sheets/titles.ts';
import type { AssembledPlan } from '../plan/assemble.ts';
import type { Fact } from '../plan/facts.ts';
import type { Plan, Statement } from '../plan/plan.ts';
import { inSteps } from './in-steps.ts';
import type { CurrentPlan, Plans } from './plans.ts';
import {
  type Drawing,
  type DrawingQuestion,
  type DrawnPlace,
  type PlaceInText,
  serverRequests,
  type ThingAtQuestion,
  type ThingQuestion,
  type ThingsAt,
} from './protocol.ts';
import { rangeOf } from './publish.ts';
import type { FeedplotSharedServices } from './services.ts';
import { endText, targetText } from './titles.ts';

/** More boxes are nothing but a pattern on a screen, and take long to lay out: places are drawn one by one. */
const MOST_BOXES = 1200;

/** Answers what a drawing of a plan shows, where its things stand in the text, and which of them the cursor is in. */
export function addDrawingHandlers(connection: Connection, services: FeedplotSharedServices): void {
  const drawn = new DrawnPlans(services);
  const documentOf = (uri: string) => services.workspace.LangiumDocuments.getDocument(URI.parse(uri));

  connection.onRequest(
    serverRequests.drawing,
    async (question: DrawingQuestion, token: CancellationToken): Promise<Drawing | null> => {
      const document = documentOf(question.uri);
      const plan = document && services.plans.Plans.of(document);
      return plan ? drawn.answer(plan, question, token) : null;
    },
  );

  connection.onRequest(serverRequests.thingPlace, ({ plan, id, what }: ThingQuestion): PlaceInText | null => {
    const statement = statementOf(services.plans.Plans.all().get(plan)?.analysis, id, what);
    if (!statement) return null;
    return { uri: statement.source.file, range: rangeOf(statement.source.range('name')) };
  });

  connection.onRequest(serverRequests.thingAt, ({ uri, position }: ThingAtQuestion): ThingsAt | null => {
    const document = documentOf(uri);
    return document ? thingsAt(document, position, services) : null;
  });
}

/** What is drawn of a plan. The same facts and words give the same drawing. */
interface Drawn {
  readonly plan: Plan;
  readonly words: string | undefined;
  readonly asked: string | null;
  readonly version: number;
  readonly place: string | null;
  readonly places: readonly DrawnPlace[];
  readonly onlyPlaces: boolean;
}

/** Remembers of each plan what was drawn last, and how it was when its text could last be read whole. */
class DrawnPlans {
  readonly #plans: Plans;
  readonly #drawn = new Map<string, Drawn>();
  readonly #whole = new Map<string, Plan>();
  #versions = 0;

  constructor(services: FeedplotSharedServices) {
    this.#plans = services.plans.Plans;
  }

  /** The work is done on the analysis as it is now, in short steps between which every other request is answered. */
  async answer(
    { uri, assembled, analysis: current }: CurrentPlan,
    question: DrawingQuestion,
    token: CancellationToken,
  ): Promise<Drawing> {
    const last = this.#whole.get(uri);
    // Half a plan would tear the picture apart.
    const stale = assembled.unreadables.length > 0 && last !== undefined;
    if (assembled.unreadables.length === 0) this.#whole.set(uri, assembled.plan);
    const plan = stale ? last : assembled.plan;
    const words = stale ? undefined : wordsOf(assembled);
    // What was worked out of a plan that is no longer current is used up.
    let analysis = plan === assembled.plan ? current : undefined;
    const analysed = () => (analysis ??= analyse(plan));

    const drawn = this.#asDrawn(uri, plan, words, question.place) ?? {
      plan,
      words,
      asked: question.place,
      version: ++this.#versions,
      ...whereToDraw(analysed(), question.place),
    };
    this.#drawn.set(uri, drawn);
    const { version, place, places, onlyPlaces } = drawn;
    const answer = { plan: uri, version, stale, place, places, onlyPlaces };
    if (question.have === version) return { ...answer, scene: null };
    const making = makingScene(analysed(), place === null ? {} : { place });
    return { ...answer, scene: await this.#plans.holding(analysed(), () => inSteps(making, token)) };
  }

  /** @param words Undefined while the text is broken: the picture stays as it is. */
  #asDrawn(uri: string, plan: Plan, words: string | undefined, asked: string | null): Drawn | undefined {
    const drawn = this.#drawn.get(uri);
    const isSame = drawn?.plan === plan && drawn.asked === asked;
    return isSame && (words === undefined || drawn.words === words) ? drawn : undefined;
  }
}

/** The place to draw, or null for the whole. */
function whereToDraw(
  analysis: Analysis,
  asked: string | null,
): Pick<Drawn, 'place' | 'places' | 'onlyPlaces'> {
  const { places, count } = drawnPlaces(analysis);
  const onlyPlaces = count > MOST_BOXES;
  const isThere = places.some(({ name }) => name === asked);
  const place = isThere ? asked : onlyPlaces ? (places[0]?.name ?? null) : null;
  return { place, places, onlyPlaces };
}

/** Differs once a label of the plan has changed. */
function wordsOf({ files }: AssembledPlan): string {
  return files.map(({ wording, formerLabels }) => `${wording} ${formerLabels.length}`).join();
}

/** Places in which something stands, and how many boxes there are in all. */
function drawnPlaces(analysis: Analysis): { places: DrawnPlace[]; count: number } {
  const { nodes, sources, destinations, places } = analysis;
  const owners = [...nodes.values(), ...sources.values(), ...destinations.values()];
  const used = new Set(owners.map(({ place }) => place));
  const titles = new Titles(analysis);
  return {
    places: [...places.values()]
      .filter((place) => used.has(place))
      .map((place) => ({ name: place.name, title: nameText(titles.of(place)) })),
    count: owners.length,
  };
}

function statementOf(analysis: Analysis | undefined, id: string, what: string): Statement | undefined {
  if (what === 'room') return analysis?.places.get(id)?.statement;
  if (!analysis) return undefined;
  const { things, links, feeds, cases, kits, places } = analysis;
  const named = ({ name }: { readonly name: string }) => name === id;
  // The cable of a source or destination has no name among the things; the rest are rows of the papers.
  const thing = things.get(id) ?? links.find(named) ?? feeds.find(named) ?? cases.get(id) ?? kits.get(id);
  return (thing ?? places.get(id))?.statement;
}

/** What the statement under the cursor makes or speaks of. */
function thingsAt(
  document: LangiumDocument,
  { line, character }: ThingAtQuestion['position'],
  services: FeedplotSharedServices,
): ThingsAt | null {
  const root = document.parseResult.value.$cstNode;
  const leaf =
    root && CstUtils.findLeafNodeBeforeOffset(root, document.textDocument.offsetAt({ line, character }));
  if (!leaf || AstUtils.getDocument(leaf.astNode) !== document) return null;
  const fact = services.plans.Plans.statementOf(leaf.astNode)?.fact;
  return fact ? drawnAs(fact) : null;
}

function drawnAs(fact: Fact): ThingsAt | null {
  switch (fact.kind) {
    case 'node':
    case 'destination':
      return { kind: 'thing', names: [fact.name] };
    case 'source':
      return { kind: fact.from ? 'picture' : 'thing', names: [fact.name] };
    case 'link':
      return { kind: 'thing', names: [fact.name ?? `${endText(fact.from)}>${endText(fact.to)}`] };
    case 'place':
      return { kind: 'room', names: [fact.name] };
    case 'feed':
      return { kind: 'feed', names: fact.targets.map((target) => `${fact.source} -> ${targetText(target)}`) };
    case 'black':
      return { kind: 'thing', names: fact.targets.map(({ thing }) => thing) };
    default:
      return null;
  }
}
