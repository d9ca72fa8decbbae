import {
  type SemanticTokens,
  SemanticTokensDeltaRequest,
  SemanticTokensRangeRequest,
  SemanticTokensRequest,
  type ServerCapabilities,
} from 'vscode-languageserver'
import { feature } from '../feature.ts'
import type { OpenFile, Workspace } from '../workspace/workspace.ts'
import { tokenModifiers, tokenTypes } from './semantic-legend.ts'
import { encodedTokens, encodedTokensIn, tokenEdits } from './semantic-tokens-encoded.ts'

const capability: ServerCapabilities = {
  semanticTokensProvider: {
    legend: { tokenTypes: [...tokenTypes], tokenModifiers: [...tokenModifiers] },
    full: { delta: true },
    range: true,
  },
}

interface LastAnswer {
  readonly id: string
  readonly data: readonly number[]
}

/** The last answer of each open file: the next may be told as the difference to it. */
const last = new WeakMap<Workspace, Map<string, LastAnswer>>()
let answers = 0

function answered(workspace: Workspace, { uri, document }: OpenFile): LastAnswer {
  const all = last.get(workspace) ?? new Map<string, LastAnswer>()
  last.set(workspace, all)
  const open = new Set(workspace.openFiles.map((file) => file.uri))
  for (const gone of all.keys()) if (!open.has(gone)) all.delete(gone)
  answers += 1
  const answer = { id: String(answers), data: encodedTokens(document) }
  all.set(uri, answer)
  return answer
}

const whole = ({ id, data }: LastAnswer): SemanticTokens => ({ resultId: id, data: [...data] })

export const semanticTokensFeature = feature(SemanticTokensRequest.type, capability, ({ workspace, open }) =>
  whole(answered(workspace, open)),
)

export const semanticTokensDeltaFeature = feature(
  SemanticTokensDeltaRequest.type,
  capability,
  ({ workspace, open, params }) => {
    const before = last.get(workspace)?.get(open.uri)
    const now = answered(workspace, open)
    if (!before || before.id !== params.previousResultId) return whole(now)
    const edits = tokenEdits(before.data, now.data).map((edit) => ({ ...edit, data: [...edit.data] }))
    return { resultId: now.id, edits }
  },
)

export const semanticTokensRangeFeature = feature(
  SemanticTokensRangeRequest.type,
  capability,
  ({ open: { document }, params: { range } }): SemanticTokens => ({
    data: [...encodedTokensIn(document, range.start.line, range.end.line)],
  }),
)
