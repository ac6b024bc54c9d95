import type { Analysis, Chain, Link, Reach } from '../analysis/model.ts';
import type { Check, Report } from './check.ts';

/** What is to be said of a chain, of whose links this is the first; undefined for nothing. */
type Say = (analysis: Analysis, chain: Chain, reach: Reach, link: Link) => Report | undefined;

interface Said {
  readonly reach: Reach;
  readonly label: string | undefined;
  readonly report: Report | undefined;
}

/**
 * Looks at every chain that stands out. What is said of one is kept for as long as it holds, because hundreds of cables
 * may be too long: a chain or a reach that changes is another object, and of all words in such a message only the label
 * of the interface may change by itself.
 */
export function aboutChains(say: Say): Check['find'] {
  const kept = new WeakMap<Chain, Said>();
  return (analysis, report) => {
    for (const chain of analysis.remarkable.chains) {
      const reach = analysis.reaches[chain.index];
      const [link] = chain.links;
      if (!reach || !link) continue;
      const { label } = (reach.judgedAs ?? chain.interface)?.statement ?? {};
      let said = kept.get(chain);
      if (said?.reach !== reach || said.label !== label) {
        said = { reach, label, report: say(analysis, chain, reach, link) };
        kept.set(chain, said);
      }
      if (said.report) report(said.report);
    }
  };
}
