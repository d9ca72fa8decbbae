import { codeActionsFeature } from './code-actions/code-actions-feature.ts'
import { completionFeature } from './completion/completion-feature.ts'
import { signatureHelpFeature } from './completion/signature-help-feature.ts'
import type { Feature } from './feature.ts'
import { formatting } from './formatting/formatting.ts'
import { formattingOnTypeFeature } from './formatting/formatting-on-type-feature.ts'
import { formattingRangeFeature } from './formatting/formatting-range-feature.ts'
import { codeLensFeature } from './hints/code-lens-feature.ts'
import { inlayHintsFeature } from './hints/inlay-hints-feature.ts'
import { hoverFeature } from './hover/hover-feature.ts'
import { definitionFeature } from './navigation/definition-feature.ts'
import { documentLinksFeature } from './navigation/document-links-feature.ts'
import { highlightFeature } from './navigation/highlight-feature.ts'
import { referencesFeature } from './navigation/references-feature.ts'
import {
  subtypesFeature,
  supertypesFeature,
  typeHierarchyFeature,
} from './navigation/type-hierarchy-feature.ts'
import { workspaceSymbolsFeature } from './navigation/workspace-symbols-feature.ts'
import { newJobFeature } from './new-job/new-job-feature.ts'
import { foldingFeature } from './outline/folding-feature.ts'
import { selectionRangesFeature } from './outline/selection-ranges-feature.ts'
import { symbolsFeature } from './outline/symbols-feature.ts'
import { planCommandFeature } from './plan/plan-command-feature.ts'
import { planFeature } from './plan/plan-feature.ts'
import { fileRenamesFeature } from './rename/file-renames-feature.ts'
import { prepareRenameFeature } from './rename/prepare-rename-feature.ts'
import { renameFeature } from './rename/rename-feature.ts'
import {
  semanticTokensDeltaFeature,
  semanticTokensFeature,
  semanticTokensRangeFeature,
} from './tokens/semantic-tokens-feature.ts'

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
