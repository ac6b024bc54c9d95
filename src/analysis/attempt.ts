import { PhysicsError } from '../physics/physics-error.ts';

/** The value of a computation that physics may refuse; undefined where it does, because the plan says impossible things. */
export function attempt<T>(compute: () => T): T | undefined {
  try {
    return compute();
  } catch (error) {
    if (error instanceof PhysicsError) return undefined;
    throw error;
  }
}
