import { formatWorking, type Working } from '../../physics/working.ts';

/** Workings as lines, with a blank one between them. A figure that went into
 * several is told once, where it first comes. */
export function workingsText(workings: readonly Working[]): string[] {
  const told = new Set<string>();
  return workings.flatMap((working, i) => {
    const lines = formatWorking(onlyOnce(working, told));
    return i === 0 ? lines : ['', ...lines];
  });
}

function onlyOnce(working: Working, told: Set<string>): Working {
  return { ...working, steps: working.steps.flatMap((step) => tellOnce(step, told)) };
}

function tellOnce(step: Working, told: Set<string>): Working[] {
  const key = JSON.stringify(step);
  if (told.has(key)) return [];
  told.add(key);
  return [onlyOnce(step, told)];
}
