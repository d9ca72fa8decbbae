import { FoldingRangeKind, FoldingRangeRequest } from 'vscode-languageserver'
import { feature } from '../feature.ts'
import { type Fold, foldsOf } from './folding.ts'

const kinds: Readonly<Record<Fold['of'], FoldingRangeKind | undefined>> = {
  block: undefined,
  comments: FoldingRangeKind.Comment,
  uses: FoldingRangeKind.Imports,
}

export const foldingFeature = feature(
  FoldingRangeRequest.type,
  { foldingRangeProvider: true },
  ({ open: { document } }) =>
    foldsOf(document).map(({ first, last, of }) => {
      const kind = kinds[of]
      return { startLine: first, endLine: last, ...(kind !== undefined && { kind }) }
    }),
)
