import type { FileSystemProvider, URI } from 'langium';
import type { Refusal } from '../language/refusal.ts';
import { decode } from '../plan/read-bytes.ts';

type Reason = NonNullable<Refusal['reason']>;

const messages: Record<Reason, string> = {
  outside: 'This file lies outside of the folder that is open, so it is not read.',
  unreadable: 'This file cannot be read: it is no file, or reading it is not allowed.',
  'too large': 'This file is too large to be a plan, so it is not read.',
};

/** A file that is there and cannot be had. */
export class Unreadable extends Error {
  readonly reason: Reason;

  constructor(reason: Reason) {
    super(messages[reason]);
    this.reason = reason;
  }
}

/** The text of a file, or why there is none. */
export async function textOnDisk(files: FileSystemProvider, uri: URI): Promise<{ text: string } | Refusal> {
  let bytes: Uint8Array;
  try {
    bytes = await files.readBinary(uri);
  } catch (error) {
    const reason = error instanceof Unreadable ? error.reason : 'unreadable';
    return { message: messages[reason], line: 0, column: 0, reason };
  }
  return decode(bytes);
}
