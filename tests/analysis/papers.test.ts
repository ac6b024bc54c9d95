/** What the papers are made of: changeovers, settings, order of pulling, pieces to bring. Worked by hand on the plan. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.ts';
import { cableStockOf } from '../../src/analysis/cable-pieces.ts';
import { changeoversOf } from '../../src/analysis/changeovers.ts';
import type { Analysis, Target } from '../../src/analysis/model.ts';
import { outputSettingsIn } from '../../src/analysis/output-settings.ts';
import { packingListsOf } from '../../src/analysis/packing-lists.ts';
import { pieceCountsOf } from '../../src/analysis/piece-counts.ts';
import { provedLinksOf } from '../../src/analysis/proved-links.ts';
import { pullingOf } from '../../src/analysis/pulls.ts';
import { planOf } from '../support/plans.ts';

const show = `plan "Changeovers" { slack 2 m rate 50 spares 50 % }
kit box { inputs in[1..4] as sdi_3g outputs out[1..4] as sdi_3g network net[1..2] as ethernet_10g carries uncompressed delay 1 frame weighs 2 kg }
kit matrix { inputs in[1..4] as sdi_3g outputs out[1..2] as sdi_3g routes inputs to outputs }
place desk
place stage
place attic
run desk <-> stage 40 m
run stage <-> attic 10 m
node s : box at stage
node d : box at desk
node m : matrix at desk
link trunk s.net1 <-> d.net1 over cat6a
link spare s.net2 <-> d.net2 over cat6a 70 m standby for trunk
source wide at stage sends 1080p50 as sdi_3g into s.in1 over rg6 5 m
source close at attic sends 1080p50 as sdi_3g into s.in2 over rg6
link d.out1 -> m.in1 over rg6 1 m
link d.out2 -> m.in2 over rg6 1 m
destination left at desk takes 1080p50 as sdi_3g from m.out1 over rg6 9 m
destination right at desk takes 1080p50 as sdi_3g from m.out2 over rg6 9 m
feed wide -> left via m.in1
feed close -> right via m.in2
segment turn
segment quiet
segment lost without trunk
feed close -> left via m.in2 instead of wide in turn
black right in quiet
stock cat6a 2 of 75 m
stock rg6 any of 10 m
case c holds s, trunk, "tape" weighs 3 kg
proved wide -> left on 2027-05-14
`;

function analysed(): Analysis {
  return analyse(planOf(show));
}

const nameOf = (target: Target) => ('kind' in target ? target.name : target.text);

test('settings: only outputs off the network and of a matrix; a picture off the network has no input', () => {
  const analysis = analysed();
  const settings = outputSettingsIn(analysis, analysis.situations[0]!);
  expect(settings.map(({ output, shows, input }) => [output.text, shows.name, input?.name])).toEqual([
    ['d.out1', 'wide', undefined],
    ['d.out2', 'close', undefined],
    ['m.out1', 'wide', 'in1'],
    ['m.out2', 'close', 'in2'],
  ]);
});

describe('changeovers', () => {
  const [turn, quiet, lost] = changeoversOf(analysed());

  test('another picture: the matrix is set, then the screen is looked at; nothing else', () => {
    expect(
      turn!.settings.map(({ setting, before }) => [
        setting.output.text,
        setting.shows.name,
        before?.shows.name,
      ]),
    ).toEqual([['m.out1', 'close', 'wide']]);
    expect(
      turn!.look.map(({ target, before, after }) => [
        nameOf(target),
        before?.feed.sourceName,
        after?.feed.sourceName,
      ]),
    ).toEqual([['left', 'wide', 'close']]);
    expect([turn!.goDark, turn!.plug, turn!.unplug]).toEqual([[], [], []]);
  });

  test('from one segment to the next: what the one changed goes back, what the next blacks out goes black', () => {
    expect(quiet!.goDark.map(({ target }) => nameOf(target))).toEqual(['right']);
    expect(
      quiet!.settings.map(({ setting, before }) => [
        setting.output.text,
        setting.shows.name,
        before?.shows.name,
      ]),
    ).toEqual([['m.out1', 'wide', 'close']]);
    expect(quiet!.look.map(({ target }) => nameOf(target))).toEqual(['left']);
  });

  test('without the trunk: it is unplugged, its standby plugged, and every picture looked at again', () => {
    expect(lost!.unplug.map(({ name }) => name)).toEqual(['trunk']);
    expect(lost!.plug.map(({ name }) => name)).toEqual(['spare']);
    expect(lost!.look.map(({ target }) => nameOf(target)).sort()).toEqual(['left', 'right']);
  });
});

test('pulling: the longest way first, on it the longest cable first, within one place last', () => {
  const { pulls, installed } = pullingOf(analysed());
  expect(
    pulls.map(({ runs, cables }) => [
      runs.map(({ name }) => name).join(),
      cables.map(({ link }) => link.name),
    ]),
  ).toEqual([
    ['desk <-> stage', ['spare', 'trunk']],
    ['stage <-> attic', ['close>s.in2']],
    ['', ['m.out1>left', 'm.out2>right', 'd.out1>m.in1', 'd.out2>m.in2']],
    ['', ['wide>s.in1']],
  ]);
  expect(installed).toEqual([]);
});

test('a cable written from its other end lies the same way', () => {
  const text = show.replace(
    'link spare s.net2 <-> d.net2 over cat6a 70 m',
    'link spare d.net2 <-> s.net2 over cat6a 70 m',
  );
  const [first] = pullingOf(analyse(planOf(text))).pulls;
  expect(first!.cables.map(({ link }) => link.name)).toEqual(['spare', 'trunk']);
});

test('what a proved picture came through is pulled', () => {
  expect([...provedLinksOf(analysed())].map(({ name }) => name).sort()).toEqual([
    'd.out1>m.in1',
    'm.out1>left',
    'trunk',
    'wide>s.in1',
  ]);
});

test('pieces: those of one length together, spares counted in, what has to be got apart', () => {
  const stock = cableStockOf(analysed());
  // 70 m and 44 m take the two pieces of 75 m; the spare (50 % of two) is as long as the longest need and not at hand.
  // Coax: 14, 9, 9, 5, 1, 1 m; only the first is longer than any piece. Three spares, as long as it.
  expect(
    pieceCountsOf(stock).map(({ cable, length_m, from, count, spare }) => [
      cable.name,
      length_m,
      from,
      count,
      spare,
    ]),
  ).toEqual([
    ['cat6a', 75, 'stock', 2, 0],
    ['cat6a', 70, 'get', 1, 1],
    ['rg6', 14, 'get', 4, 3],
    ['rg6', 10, 'any', 5, 0],
  ]);
});

test('packing: what each thing weighs, a cable by the piece that is taken', () => {
  const analysis = analysed();
  const [list] = packingListsOf(analysis, cableStockOf(analysis));
  const perMetre = analysis.cables.get('cat6a')!.weight_kg_per_m;
  expect(list!.things.map(({ thing, piece, weight_kg }) => [thing.name, piece?.piece_m, weight_kg])).toEqual([
    ['s', undefined, 2],
    ['trunk', 75, perMetre === undefined ? undefined : 75 * perMetre],
  ]);
});
