import type { Analysis, Segment, Traffic } from './model.ts';
import { loadIn } from './traffic.ts';

/** One direction of a network link. */
export interface Heaviest {
  readonly traffic: Traffic;
  readonly segment: Segment | undefined;
  readonly direction: 'forward' | 'backward';
  readonly share: number;
}

/** The fullest network link of the plan, in whichever situation; undefined when none carries anything. */
export function heaviestLink(analysis: Analysis): Heaviest | undefined {
  return heaviestOf(analysis, ({ worst }) => worst);
}

/** The fullest network link in one situation: undefined stands for the plan without segments. */
export function heaviestLinkIn(analysis: Analysis, segment: Segment | undefined): Heaviest | undefined {
  return heaviestOf(analysis, (traffic) => {
    const { forward, backward } = loadIn(traffic, segment);
    const isForward = forward.load_bits_per_second >= backward.load_bits_per_second;
    return {
      segment,
      direction: isForward ? 'forward' : 'backward',
      share: (isForward ? forward : backward).share,
    };
  });
}

/** The first by order of statements among equals. */
function heaviestOf(
  { traffic }: Analysis,
  look: (one: Traffic) => Pick<Traffic['worst'], 'segment' | 'direction' | 'share'>,
): Heaviest | undefined {
  let heaviest: Heaviest | undefined;
  for (const one of traffic) {
    if (!one.link.network) continue;
    const { segment, direction, share } = look(one);
    if (share === undefined || share <= (heaviest?.share ?? 0)) continue;
    heaviest = { traffic: one, segment, direction, share };
  }
  return heaviest;
}
