import { ProtocolRequestType } from 'vscode-languageserver'
import { type NewJobParams, newJobRequest } from '../client-requests.ts'
import { workspaceFeature } from '../feature.ts'
import { newJobText } from './new-job.ts'

export const newJobFeature = workspaceFeature(
  new ProtocolRequestType<NewJobParams, string, never, void, void>(newJobRequest),
  {},
  ({ params }) => newJobText(params),
)
