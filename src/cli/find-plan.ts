import { existsSync, readdirSync, realpathSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { PlanReader } from './open-plan.ts';
import { Trouble } from './trouble.ts';

const ENDING = '.feedplot';

/** A file that was found for a command. */
export interface FoundPlan {
  /** What a link points to. */
  readonly path: string;
  /** Nobody named it: it is the only plan there. */
  readonly chosen: boolean;
}

/**
 * The file that a person named; for a folder, and for no name at all, the one plan in that folder.
 *
 * @throws Trouble when there is none, or several to choose from.
 */
export function findPlan(reader: PlanReader, folder: string, named: string | undefined): FoundPlan {
  const path = resolve(folder, named ?? '.');
  const stats = statSync(path, { throwIfNoEntry: false });
  if (!stats) throw new Trouble(noSuchFile(path, named ?? '.'));
  if (!stats.isDirectory()) return { path: realpathSync(path), chosen: false };
  return { path: onlyPlanIn(reader, path, named), chosen: true };
}

function onlyPlanIn(reader: PlanReader, folder: string, named: string | undefined): string {
  const plans = namesIn(folder).filter((name) => hasPlan(reader, join(folder, name)));
  const where = named === undefined ? 'in this folder' : `in ${named}`;
  if (plans.length === 0) {
    throw new Trouble(
      `No plan ${where}. Name a ${ENDING} file, or write one to start from with \`feedplot new\`.`,
    );
  }
  if (plans.length > 1) {
    const list = plans.length > 8 ? `${plans.slice(0, 8).join(', ')}, …` : plans.join(', ');
    throw new Trouble(`${plans.length} plans ${where}: ${list}. Name the one that is meant.`);
  }
  return realpathSync(join(folder, plans[0]!));
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith(ENDING))
      .sort();
  } catch {
    throw new Trouble(`The folder ${folder} may not be read.`);
  }
}

/** A file that cannot be read is no plan to choose; naming it tells why. */
function hasPlan(reader: PlanReader, path: string): boolean {
  try {
    return reader.file(realpathSync(path)).hasPlan;
  } catch {
    return false;
  }
}

function noSuchFile(path: string, named: string): string {
  const hint = existsSync(path + ENDING) ? ` Did you mean ${named}${ENDING}?` : '';
  return `No such file: ${named}.${hint}`;
}
