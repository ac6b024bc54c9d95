/** What the panels beside the text have in common. */
import { LSPErrorCodes, ResponseError } from 'vscode-languageclient';

/** A keystroke came between: what was asked for is asked again. */
export function isCancelled(error: unknown): boolean {
  const { RequestCancelled, ContentModified } = LSPErrorCodes;
  return (
    error instanceof ResponseError && (error.code === RequestCancelled || error.code === ContentModified)
  );
}

/** What a page's policy and its script have in common, so that no other script runs. */
export function newNonce(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
}
