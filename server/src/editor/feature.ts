import type { MessageDirection, ProtocolRequestType, ServerCapabilities } from 'vscode-languageserver'
import type { OpenFile, Workspace } from './workspace.ts'

/** What a feature is asked about. */
export interface Asked<P> {
  readonly params: P
  readonly workspace: Workspace
  readonly open: OpenFile
}

/** One thing an editor can ask of a text: the request, what the server says it can, and the answer. */
export interface Feature {
  readonly method: string
  readonly capability: ServerCapabilities
  readonly answer: (asked: Asked<never>) => unknown
}

export const feature = <P, R>(
  {
    method,
  }: ProtocolRequestType<P, R | null, unknown, void, unknown> & {
    readonly messageDirection?: MessageDirection
  },
  capability: ServerCapabilities,
  answer: (asked: Asked<P>) => R | null,
): Feature => ({ method, capability, answer })
