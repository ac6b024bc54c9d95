import { faultCheck } from './check.ts';
import { changedPlan } from './example-plans.ts';

export const incomplete = faultCheck({
  name: 'incomplete',
  severity: 'error',
  summary: 'A setting lacks the part that makes it mean something.',
  explanation: `The setting is read, but what matters is not said, so nothing can be worked out from it.

**How it is judged.** By what the setting needs; the message says it.

**What mends it.** The missing part.`,
  examples: [
    {
      wrong: changedPlan('carries uncompressed', 'carries compressed'),
      right: changedPlan('carries uncompressed', 'carries compressed 8:1'),
    },
  ],
});
