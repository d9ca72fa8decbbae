import type { Feature } from './feature.ts'

/** Everything an editor can ask, one row a feature. */
export const features: readonly Feature[] = []
