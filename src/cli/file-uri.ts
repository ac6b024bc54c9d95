import { relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The address of a file, percent-encoded as the paths of imports are, so that one file has one address. */
export function fileUri(path: string): string {
  const encoded = path.split(sep).map(encodeSegment).join('/');
  return `file://${encoded.startsWith('/') ? '' : '/'}${encoded}`;
}

function encodeSegment(segment: string): string {
  const hexadecimal = (c: string) => `%${c.charCodeAt(0).toString(16).toUpperCase()}`;
  return encodeURIComponent(segment).replace(/[!'()*]/g, hexadecimal);
}

/** The path of a file address; undefined for an address that no file of this machine has. */
export function filePath(uri: string): string | undefined {
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}

/** A file's name as seen from a folder, the way it can be typed there. */
export function nameFrom(folder: string, uri: string): string {
  const path = filePath(uri);
  return path === undefined ? uri : relative(folder, path) || '.';
}
