import type {
  ClientCapabilities,
  MessageDirection,
  ProtocolRequestType,
  ResponseError,
  ServerCapabilities,
  TextDocumentPositionParams,
} from 'vscode-languageserver'
import type { Finding } from '../checks/check.ts'
import { locate } from '../job/document.ts'
import type { Settings } from './settings.ts'
import type { OpenFile, Workspace } from './workspace/workspace.ts'

/** What a feature is asked about: the whole workspace. */
export interface WorkspaceRequestContext<P> {
  readonly params: P
  readonly workspace: Workspace
  readonly settings: Settings
  readonly client: ClientCapabilities
  /** Where the pages of the checks stand, ending in `/`, when they stand anywhere. */
  readonly docs: string | undefined
  /** `YYYY-MM-DD`. */
  readonly today: string
  /** To be looked at between one file and the next. */
  readonly token: { readonly isCancellationRequested: boolean }
  /** To be told how far a long search is. */
  readonly progress: (done: number, of: number) => void
  /** What is found in a text as it stands now. */
  readonly findingsOf: (open: OpenFile) => readonly Finding[]
  /** Has the editor told once when this file, or one that it uses, has changed. */
  readonly follow: (uri: string, open: OpenFile | undefined) => void
}

/** What a feature is asked about: a text that is open. */
export interface TextRequestContext<P> extends WorkspaceRequestContext<P> {
  readonly open: OpenFile
}

/** What the server says it can; where that depends on it, to an editor that can this. */
type Capability = ServerCapabilities | ((client: ClientCapabilities) => ServerCapabilities)

/** One thing an editor can ask: the request, what the server says it can, and the answer. */
export interface Feature {
  readonly method: string
  readonly capability: Capability
  readonly of: 'text' | 'workspace'
  readonly answer: (asked: TextRequestContext<never>) => unknown
}

type Request<P, R> = ProtocolRequestType<P, R | null, unknown, void, unknown> & {
  readonly messageDirection?: MessageDirection
}

/** A `ResponseError` says, for people, why there is no answer. */
type Answer<R> = R | null | ResponseError<void>

/** A thing to ask of a text that is open; of any other the answer is null. */
export const feature = <P, R>(
  { method }: Request<P, R>,
  capability: Capability,
  answer: (asked: TextRequestContext<P>) => Answer<R> | Promise<Answer<R>>,
): Feature => ({ method, capability, of: 'text', answer })

type LocatedPosition = NonNullable<ReturnType<typeof locate>>

/** A thing to ask of a place in a text that is open; beyond the end of the text the answer is null. */
export const featureAt = <P extends TextDocumentPositionParams, R>(
  request: Request<P, R>,
  capability: Capability,
  answer: (asked: TextRequestContext<P>, at: LocatedPosition) => Answer<R> | Promise<Answer<R>>,
): Feature =>
  feature(request, capability, (asked) => {
    const at = locate(asked.open.document, asked.params.position)
    return at ? answer(asked, at) : null
  })

/** A thing to ask of all job files, or of something answered before. */
export const workspaceFeature = <P, R>(
  { method }: Request<P, R>,
  capability: Capability,
  answer: (asked: WorkspaceRequestContext<P>) => Answer<R> | Promise<Answer<R>>,
): Feature => ({ method, capability, of: 'workspace', answer })
