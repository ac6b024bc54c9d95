import { join } from 'node:path';
import { analyse } from '../analysis/analyse.ts';
import type { Analysis } from '../analysis/model.ts';
import type { Finding } from '../checks/finding.ts';
import { type AcceptedFinding, checkPlan } from '../checks/findings.ts';
import { assemblePlan, type FileAccess } from '../plan/assemble.ts';
import { readLibrary } from '../plan/library/read.ts';
import type { MissingFile } from '../plan/plan.ts';
import type { ReadFile } from '../plan/read-file.ts';
import { boundaryOf, Disk } from './disk.ts';
import { fileUri } from './file-uri.ts';
import { Trouble } from './trouble.ts';

/** A plan as the command line works with it. */
export interface OpenPlan {
  readonly uri: string;
  /** Addresses of its files, the own one first, without those of the shipped library. */
  readonly files: readonly string[];
  readonly analysis: Analysis;
  readonly findings: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
  /** How many places of its text could not be read. */
  readonly unreadable: number;
}

const reasons: Partial<Record<MissingFile['reason'], string>> = {
  'too large': 'The file has more than 16 MB. Is it a plan?',
  unreadable: 'The file may not be read.',
};

/** Reads plans from the disk, each file once. Paths are real ones: what a link points to. */
export class PlanReader {
  readonly #libraryFolder: string;
  readonly #disks = new Map<string, Disk>();

  /** @param program Folder in which the program lies, with the shipped library beside it. */
  constructor(program: string) {
    this.#libraryFolder = fileUri(join(program, 'library'));
  }

  /** Files of the shipped library. */
  get libraryFiles(): readonly ReadFile[] {
    return readLibrary(this.#libraryFolder);
  }

  /** @throws Trouble when the file cannot be read */
  file(path: string): ReadFile {
    const file = this.#disk(path).file(fileUri(path));
    if (typeof file === 'string') throw new Trouble(`${path}: ${reasons[file] ?? 'No such file.'}`);
    return file;
  }

  /** A plan with all that it imports, worked out and checked. @throws Trouble when its own file cannot be read */
  plan(path: string): OpenPlan {
    const { uri } = this.file(path);
    return openPlan(uri, this.#disk(path));
  }

  /** What the shipped library alone says: interfaces and cables without a plan. */
  library(): Analysis {
    const { library } = new Disk('/', this.#libraryFolder);
    return analyse({
      file: '',
      files: library.map((file) => file.uri),
      statements: library.flatMap((file) => file.statements),
      missingFiles: [],
      libraryFiles: new Set(library.map((file) => file.uri)),
    });
  }

  #disk(path: string): Disk {
    const boundary = boundaryOf(path);
    let disk = this.#disks.get(boundary);
    if (!disk) {
      disk = new Disk(boundary, this.#libraryFolder);
      this.#disks.set(boundary, disk);
    }
    return disk;
  }
}

/** A plan from wherever its files come, worked out and checked. Its own file must be there. */
export function openPlan(uri: string, access: FileAccess): OpenPlan {
  const { plan, unreadables } = assemblePlan(uri, access)!;
  const analysis = analyse(plan);
  const files = plan.files.filter((file) => !plan.libraryFiles.has(file));
  return { uri, files, analysis, ...checkPlan(analysis, unreadables), unreadable: unreadables.length };
}
