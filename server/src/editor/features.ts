import type { Feature } from './feature.ts'
import { formatting } from './formatting.ts'
import { hoverFeature } from './hover-feature.ts'
import { inlayHintsFeature } from './inlay-hints-feature.ts'

/** Everything an editor can ask, one row a feature. */
export const features: readonly Feature[] = [formatting, hoverFeature, inlayHintsFeature]
