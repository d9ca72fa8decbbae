import { positive } from '../guard.ts'

/** A fuse opens for certain only from this many times its rating on, and then within hours. Source: conventional fusing current of gG fuse-links,
 * IEC 60269-1 (from memory); a circuit breaker opens from 1.3 or 1.45 times on. */
const certain = 1.6

/** Least short-circuit current (A) that opens a device of `rating` (A, > 0, else OutOfRange), however slowly. What stays below it is fed until
 * something burns.
 * @example leastFault(100) // ≈ 160 */
export const leastFault = (rating: number): number => certain * positive('rating', rating)
