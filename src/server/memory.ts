import { setFlagsFromString } from 'node:v8';

/**
 * Lets the engine collect what is short-lived often and in small portions. By itself it would let that grow to dozens of
 * megabytes before it looks, and a plan that is read and worked out leaves much of it.
 *
 * To be called first of all. An engine that does not know the setting says so on its error stream and goes on.
 */
export function keepMemorySmall(): void {
  setFlagsFromString('--semi-space-growth-factor=1');
}
