import type { CheckText } from './check.ts';

export const toolFault: CheckText = {
  name: 'tool-fault',
  severity: 'error',
  summary: 'A check of Feedplot itself has failed.',
  explanation: `Something in Feedplot went wrong while it looked at the plan. The plan is not at fault, and everything
that the other checks found still holds; but what the failed check would have found is not known.

**How it is judged.** The check stopped with an exception, which is written to the log.

**What mends it.** Nothing in the plan. Please report it, with the plan if you may share it; until it is repaired look
after what the named check looks after yourself.`,
  examples: [],
};
