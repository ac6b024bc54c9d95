import { expect, test } from 'vitest';
import { analysisOf, deliveryOf, kits, linkOf, wayOf } from './plans.ts';

/** Two boxes joined by two trunks, and a camera and a screen at either end. */
const pair = `${kits}
node a : edge_box
node b : edge_box
source cam sends 1080p50 as sdi_3g into a.in1 over rg6 1 m
source cam_2 sends 1080p50 as sdi_3g into a.in2 over rg6 1 m
destination screen takes 1080p50 as sdi_3g from b.out1 over rg6 1 m
destination screen_2 takes 1080p50 as sdi_3g from b.out2 over rg6 1 m
`;
const trunk = 'link trunk a.net1 <-> b.net1 over cat6a 50 m';
const second = 'link second a.net2 <-> b.net2 over cat6a 50 m';

test('an input goes out to the network and the network to an output', () => {
  const analysis = analysisOf(pair, trunk, 'feed cam -> screen');
  expect(wayOf(analysis, 'cam -> screen')).toBe('cam a.in1 a.net1 b.net1 b.out1 screen');
  expect(deliveryOf(analysis, 'cam -> screen').routes[0]!.steps.map(({ forward }) => forward)).toEqual([
    true,
    true,
    true,
  ]);
});

test('against the way a link is written it runs backward', () => {
  const analysis = analysisOf(pair, 'link trunk b.net1 <-> a.net1 over cat6a 50 m', 'feed cam -> screen');
  expect(deliveryOf(analysis, 'cam -> screen').routes[0]!.steps.map(({ forward }) => forward)).toEqual([
    true,
    false,
    true,
  ]);
});

test('an input does not come out of the same box, nor the network of one port at the other', () => {
  const analysis = analysisOf(
    pair,
    trunk,
    'node c : edge_box',
    'link on b.net2 <-> c.net1 over cat6a 5 m',
    'destination near from a.out1 over rg6 1 m',
    'destination far from c.out1 over rg6 1 m',
    'feed cam -> near, far',
  );
  expect(deliveryOf(analysis, 'cam -> near').noRoute?.kind).toBe('no way');
  expect(deliveryOf(analysis, 'cam -> far').noRoute?.kind).toBe('no way');
});

test('a follower copies its input and nothing else', () => {
  const analysis = analysisOf(
    pair,
    trunk,
    'destination copy from a.loop1 over rg6 1 m',
    'destination other from a.loop2 over rg6 1 m',
    'feed cam -> copy, other',
  );
  expect(wayOf(analysis, 'cam -> copy')).toBe('cam a.in1 a.loop1 copy');
  expect(deliveryOf(analysis, 'cam -> other').noRoute?.kind).toBe('no way');
});

test('a mixer ends its inputs', () => {
  const analysis = analysisOf(
    kits,
    'node mix : mixer_4',
    'source cam sends 1080p50 into mix.in1 over rg6 1 m',
    'destination screen from mix.out1 over rg6 1 m',
    'feed cam -> screen',
  );
  expect(deliveryOf(analysis, 'cam -> screen').noRoute?.kind).toBe('no way');
});

test('a matrix joins inputs to outputs, a patch field passes either way', () => {
  const analysis = analysisOf(
    kits,
    'node m : matrix_4',
    'node p : patch_4',
    'source cam sends 1080p50 as sdi_3g into p.rear3 over rg6 1 m',
    'link p.front3 -> m.in2 over rg6 1 m',
    'link m.out4 -> p.front1 over rg6 1 m',
    'destination screen as sdi_3g from p.rear1 over rg6 1 m',
    'feed cam -> screen',
  );
  expect(wayOf(analysis, 'cam -> screen')).toBe('cam p.rear3 p.front3 m.in2 m.out4 p.front1 p.rear1 screen');
});

test('a switch joins its ports', () => {
  const analysis = analysisOf(
    pair,
    'node s : switch_8',
    'link l1 a.net1 <-> s.net1 over cat6a 5 m',
    'link l2 s.net2 <-> b.net1 over cat6a 5 m',
    'feed cam -> screen',
  );
  expect(wayOf(analysis, 'cam -> screen')).toBe('cam a.in1 a.net1 s.net1 s.net2 b.net1 b.out1 screen');
});

test('a switch never sends back out of the port it came in by', () => {
  const own = 'destination own from a.out1 over rg6 1 m';
  const one = analysisOf(
    pair,
    own,
    'node s : switch_8',
    'link l1 a.net1 <-> s.net1 over cat6a 5 m',
    'feed cam -> own',
  );
  expect(deliveryOf(one, 'cam -> own').noRoute?.kind).toBe('no way');
  // With two cables to the switch the picture can go round.
  const round = analysisOf(
    pair,
    own,
    'node s : switch_8',
    'link l1 a.net1 <-> s.net1 over cat6a 5 m',
    'link l2 a.net2 <-> s.net2 over cat6a 5 m',
    'feed cam -> own',
  );
  expect(wayOf(round, 'cam -> own')).toBe('cam a.in1 a.net1 s.net1 s.net2 a.net2 a.out1 own');
});

// Two switches that are joined: out to one, across, and back from the other; neither sends back where it came from.
test('a picture finds the way round two switches back to its own box', () => {
  const analysis = analysisOf(
    pair,
    'destination own from a.out1 over rg6 1 m',
    'node s : switch_8',
    'node t : switch_8',
    'link l1 a.net1 <-> s.net1 over cat6a 5 m',
    'link l2 a.net2 <-> t.net1 over cat6a 5 m',
    'link l3 s.net8 <-> t.net8 over cat6a 5 m',
    'feed cam -> own',
  );
  expect(wayOf(analysis, 'cam -> own')).toBe(
    'cam a.in1 a.net1 s.net1 s.net8 t.net8 t.net1 a.net2 a.out1 own',
  );
});

test('fewest links first', () => {
  const analysis = analysisOf(
    pair,
    'node s : switch_8',
    'link l1 a.net1 <-> s.net1 over cat6a 5 m',
    'link l2 s.net2 <-> b.net1 over cat6a 5 m',
    second,
    'feed cam -> screen',
  );
  expect(wayOf(analysis, 'cam -> screen')).toBe('cam a.in1 a.net2 b.net2 b.out1 screen');
  expect(deliveryOf(analysis, 'cam -> screen').ties).toEqual([]);
});

test('of equally short ways the first by order of statements, and the tie is told', () => {
  for (const [first, other] of [
    [trunk, second],
    [second, trunk],
  ]) {
    const analysis = analysisOf(pair, first!, other!, 'feed cam -> screen');
    const { ties, routes } = deliveryOf(analysis, 'cam -> screen');
    const name = first!.split(' ')[1]!;
    expect(routes[0]!.steps[1]!.link.name).toBe(name);
    expect(
      ties.map(({ port, chosen, others }) => [port.text, chosen.name, others.map((one) => one.name)]),
    ).toEqual([['a.in1', name, [other!.split(' ')[1]]]]);
  }
});

test('several destinations of one source form one tree', () => {
  const analysis = analysisOf(
    pair,
    trunk,
    second,
    'feed cam -> screen_2, screen',
    'destination screen_3 from b.out3 over rg6 1 m',
    'feed cam -> screen_3',
  );
  const trunks = analysis.deliveries.map(({ routes }) => routes[0]!.steps[1]!.link.name);
  expect(trunks).toEqual(['trunk', 'trunk', 'trunk']);
  expect(analysis.flows).toHaveLength(1);
});

test('`via` pins the way, others may lie between', () => {
  const analysis = analysisOf(
    pair,
    trunk,
    second,
    'feed cam -> screen via b.net2',
    'feed cam_2 -> screen_2 via a.net2',
  );
  expect(wayOf(analysis, 'cam -> screen')).toBe('cam a.in1 a.net2 b.net2 b.out1 screen');
  expect(wayOf(analysis, 'cam_2 -> screen_2')).toBe('cam_2 a.in2 a.net2 b.net2 b.out2 screen_2');
});

test('the two ends of one cable are met in the order in which the picture passes them', () => {
  const there = analysisOf(pair, trunk, 'feed cam -> screen via a.net1, b.net1, b.net1');
  expect(wayOf(there, 'cam -> screen')).toBe('cam a.in1 a.net1 b.net1 b.out1 screen');
  const back = analysisOf(pair, trunk, second, 'feed cam -> screen via b.net1, a.net1');
  expect(deliveryOf(back, 'cam -> screen').noRoute).toMatchObject({
    kind: 'via cannot be met',
    via: { text: 'a.net1' },
  });
});

test('`via` ports are met in their order; the first that cannot be met is told', () => {
  const missed = (via: string) =>
    deliveryOf(analysisOf(pair, trunk, second, `feed cam -> screen via ${via}`), 'cam -> screen').noRoute;
  expect(missed('a.in1, a.net2, b.net2, b.out1')).toBeUndefined();
  expect(missed('a.in2')).toMatchObject({ kind: 'via cannot be met', via: { text: 'a.in2' } });
  expect(missed('a.net1, a.net2')).toMatchObject({ via: { text: 'a.net2' } });
  expect(missed('b.out1, b.net1')).toMatchObject({ via: { text: 'b.net1' } });
  // A socket with nothing in it.
  expect(missed('b.out4')).toMatchObject({ via: { text: 'b.out4' } });
});

test('a standby is not used', () => {
  const analysis = analysisOf(pair, trunk, `${second} standby for trunk`, 'feed cam -> screen via a.net2');
  expect(deliveryOf(analysis, 'cam -> screen').noRoute?.kind).toBe('via cannot be met');
});

test('the same kind of carriage must stand where a picture enters and where it leaves', () => {
  const compressed = `
kit small { inputs in1 as sdi_3g outputs out1 as sdi_3g network net as ethernet_10g carries compressed 8:1 }
node c : small
node d : small
node s : switch_8
link a.net1 <-> s.net1 over cat6a 5 m
link b.net1 <-> s.net2 over cat6a 5 m
link c.net <-> s.net3 over cat6a 5 m
link d.net <-> s.net4 over cat6a 5 m
source small_cam sends 1080p50 as sdi_3g into c.in1 over rg6 1 m
destination small_screen as sdi_3g from d.out1 over rg6 1 m
feed cam -> screen, small_screen
feed small_cam -> screen_2, small_screen`;
  const analysis = analysisOf(pair, compressed);
  const arrived = analysis.deliveries.map(({ feed, routes }) => `${feed.name} ${routes.length}`);
  expect(arrived).toEqual([
    'cam -> screen 1',
    'cam -> small_screen 0',
    'small_cam -> screen_2 0',
    'small_cam -> small_screen 1',
  ]);
});

test('a node that sends by itself, and a destination that receives by itself', () => {
  const analysis = analysisOf(
    kits,
    'kit net_camera { network net as ethernet_10g carries uncompressed }',
    'node s : switch_8',
    'node head : net_camera',
    'link head.net <-> s.net1 over cat6a 5 m',
    'source eye from head.net sends 1080p50',
    'source probe sends 1080p50 as ethernet_10g into s.net2 over cat6a 5 m',
    'destination wall from s.net3 over cat6a 5 m',
    'feed eye -> wall',
    'feed probe -> wall',
  );
  expect(wayOf(analysis, 'eye -> wall')).toBe('head.net s.net1 s.net3 wall');
  expect(analysis.sources.get('probe')!.sendsByItself).toBe(true);
  expect(analysis.destinations.get('wall')!.receivesByItself).toBe(true);
  // Two pictures at one destination are two pictures, over the network too.
  expect(deliveryOf(analysis, 'probe -> wall').twoPictures?.port.text).toBe('wall');
});

test('an output, an input or a destination holds one picture', () => {
  const analysis = analysisOf(pair, trunk, 'feed cam -> screen', 'feed cam_2 -> screen');
  const late = deliveryOf(analysis, 'cam_2 -> screen');
  expect(deliveryOf(analysis, 'cam -> screen').twoPictures).toBeUndefined();
  expect(late.twoPictures?.other.feed.name).toBe('cam -> screen');
  expect(late.twoPictures?.port.text).toBe('b.out1');
  expect(late.routes).toHaveLength(1);
});

test('a picture goes round an output that another one has', () => {
  const analysis = analysisOf(
    pair,
    trunk,
    'node m : matrix_4',
    'link b.out3 -> m.in1 over rg6 1 m',
    'link b.out4 -> m.in2 over rg6 1 m',
    'destination x from m.out1 over rg6 1 m',
    'destination y from m.out2 over rg6 1 m',
    'feed cam -> x',
    'feed cam_2 -> y',
  );
  expect(wayOf(analysis, 'cam -> x')).toBe('cam a.in1 a.net1 b.net1 b.out3 m.in1 m.out1 x');
  expect(wayOf(analysis, 'cam_2 -> y')).toBe('cam_2 a.in2 a.net1 b.net1 b.out4 m.in2 m.out2 y');
});

test('one source may go twice through the same output', () => {
  const analysis = analysisOf(
    pair,
    trunk,
    'node split : splitter',
    'link b.out3 -> split.in1 over rg6 1 m',
    'destination x from split.out1 over rg6 1 m',
    'destination y from split.out2 over rg6 1 m',
    'feed cam -> x, y',
  );
  expect(analysis.deliveries.every(({ routes, twoPictures }) => routes.length === 1 && !twoPictures)).toBe(
    true,
  );
});

test('why a feed cannot even begin', () => {
  const analysis = analysisOf(
    pair,
    trunk,
    'source loose sends 1080p50',
    'destination bare',
    'feed loose -> screen',
    'feed cam -> bare, b.in1, b.out3, a.in2',
    'feed gone -> screen',
    'feed cam -> gone',
  );
  expect(analysis.deliveries.map(({ feed, noRoute }) => `${feed.name}: ${noRoute?.kind}`)).toEqual([
    'loose -> screen: source not plugged in',
    'cam -> bare: target not plugged in',
    'cam -> b.in1: target not plugged in',
    'cam -> b.out3: target is no input',
    'cam -> a.in2: no way',
    'gone -> screen: source not known',
    'cam -> gone: target not known',
  ]);
});

test('an input that nothing is plugged into can be wished for, and is told', () => {
  const analysis = analysisOf(
    kits,
    'node mix : mixer_4',
    'node b : edge_box',
    'source cam sends 1080p50 into b.in1',
    'feed cam -> mix.in3',
  );
  expect(analysis.names.unknownPorts).toEqual([]);
  expect(deliveryOf(analysis, 'cam -> mix.in3').noRoute?.kind).toBe('target not plugged in');
});

test('what another feed says already does not count', () => {
  const analysis = analysisOf(
    pair,
    trunk,
    'segment s',
    'segment t',
    'feed cam -> screen',
    'feed cam -> screen, screen_2',
    'feed cam -> screen_2 in s, t',
    'feed cam_2 -> a.in1 in s',
  );
  expect(analysis.feeds.map(({ repeats }) => repeats?.index)).toEqual([
    undefined,
    0,
    undefined,
    2,
    undefined,
  ]);
  expect(analysis.deliveries.map(({ feed, segment }) => `${feed.index} ${segment?.name ?? ''}`)).toEqual([
    '0 ',
    '2 ',
    '4 s',
  ]);
});

test('links onto themselves and feeds to their own source do no harm', () => {
  const analysis = analysisOf(
    pair,
    'link loop a.net1 <-> a.net1 over cat6a 1 m',
    trunk,
    'feed cam -> cam',
    'feed cam -> screen',
  );
  expect(linkOf(analysis, 'loop').directionFault).toBe('onto itself');
  expect(deliveryOf(analysis, 'cam -> cam').noRoute?.kind).toBe('target not known');
  expect(wayOf(analysis, 'cam -> screen')).toBe('cam a.in1 a.net1 b.net1 b.out1 screen');
});
