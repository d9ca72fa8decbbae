import { codeActionsFeature } from './code-actions-feature.ts'
import { completionFeature } from './completion-feature.ts'
import { definitionFeature } from './definition-feature.ts'
import type { Feature } from './feature.ts'
import { formatting } from './formatting.ts'
import { highlightFeature } from './highlight-feature.ts'
import { hoverFeature } from './hover-feature.ts'
import { inlayHintsFeature } from './inlay-hints-feature.ts'
import { prepareRenameFeature } from './prepare-rename-feature.ts'
import { referencesFeature } from './references-feature.ts'
import { renameFeature } from './rename-feature.ts'
import { signatureHelpFeature } from './signature-help-feature.ts'

/** Everything an editor can ask, one row a feature. */
export const features: readonly Feature[] = [
  codeActionsFeature, completionFeature,
  definitionFeature,
  formatting,
  highlightFeature,
  hoverFeature,
  inlayHintsFeature,
  prepareRenameFeature,
  referencesFeature,
  renameFeature,
  signatureHelpFeature,
]
