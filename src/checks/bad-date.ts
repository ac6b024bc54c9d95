import { faultCheck } from './check.ts';
import { changedPlan } from './example-plans.ts';

export const badDate = faultCheck({
  name: 'bad-date',
  severity: 'error',
  summary: 'A date does not exist or is not written in full.',
  explanation: `Dates stand in the book and on the line-check sheet, where 2027-3-2 may be read as March or as February.

**How it is judged.** Year, month and day with all their digits (ISO 8601), and a day of the calendar.

**What mends it.** The date as 2027-05-14.`,
  examples: [
    {
      wrong: changedPlan('rate 50', 'rate 50\n  date 2027-5-4'),
      right: changedPlan('rate 50', 'rate 50\n  date 2027-05-04'),
    },
  ],
});
