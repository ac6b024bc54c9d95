/** Where a running picture stands: by the time since it began and its rate. */
export interface Tick {
  /** Whole frames since the beginning. */
  readonly frame: number;
  readonly second: number;
  /** Frames since the last whole second. */
  readonly inSecond: number;
  /** Whether the flash is on: in the first two frames of each second. */
  readonly flash: boolean;
}

const FLASH_FRAMES = 2;

/**
 * @param seconds Since the beginning.
 * @param framesPerSecond The picture's rate; need not be whole.
 */
export function tickAt(seconds: number, framesPerSecond: number): Tick {
  const second = Math.floor(seconds);
  const inSecond = Math.floor((seconds - second) * framesPerSecond);
  return { frame: Math.floor(seconds * framesPerSecond), second, inSecond, flash: inSecond < FLASH_FRAMES };
}
