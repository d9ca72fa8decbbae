import { codeActionsFeature } from './code-actions-feature.ts'
import { codeLensFeature } from './code-lens-feature.ts'
import { completionFeature } from './completion-feature.ts'
import { definitionFeature } from './definition-feature.ts'
import { documentLinksFeature } from './document-links-feature.ts'
import type { Feature } from './feature.ts'
import { fileRenamesFeature } from './file-renames-feature.ts'
import { foldingFeature } from './folding-feature.ts'
import { formatting } from './formatting.ts'
import { formattingOnTypeFeature } from './formatting-on-type-feature.ts'
import { formattingRangeFeature } from './formatting-range-feature.ts'
import { highlightFeature } from './highlight-feature.ts'
import { hoverFeature } from './hover-feature.ts'
import { inlayHintsFeature } from './inlay-hints-feature.ts'
import { newJobFeature } from './new-job-feature.ts'
import { planCommandFeature } from './plan-command-feature.ts'
import { planFeature } from './plan-feature.ts'
import { prepareRenameFeature } from './prepare-rename-feature.ts'
import { referencesFeature } from './references-feature.ts'
import { renameFeature } from './rename-feature.ts'
import { selectionRangesFeature } from './selection-ranges-feature.ts'
import {
  semanticTokensDeltaFeature,
  semanticTokensFeature,
  semanticTokensRangeFeature,
} from './semantic-tokens-feature.ts'
import { signatureHelpFeature } from './signature-help-feature.ts'
import { symbolsFeature } from './symbols-feature.ts'
import { subtypesFeature, supertypesFeature, typeHierarchyFeature } from './type-hierarchy-feature.ts'
import { workspaceSymbolsFeature } from './workspace-symbols-feature.ts'

/** Everything an editor can ask, one row a feature. */
export const features: readonly Feature[] = [
  codeActionsFeature,
  codeLensFeature,
  completionFeature,
  definitionFeature,
  documentLinksFeature,
  fileRenamesFeature,
  foldingFeature,
  formatting,
  formattingOnTypeFeature,
  formattingRangeFeature,
  highlightFeature,
  hoverFeature,
  inlayHintsFeature,
  newJobFeature,
  planCommandFeature,
  planFeature,
  prepareRenameFeature,
  referencesFeature,
  renameFeature,
  selectionRangesFeature,
  semanticTokensDeltaFeature,
  semanticTokensFeature,
  semanticTokensRangeFeature,
  signatureHelpFeature,
  symbolsFeature,
  subtypesFeature,
  supertypesFeature,
  typeHierarchyFeature,
  workspaceSymbolsFeature,
]
