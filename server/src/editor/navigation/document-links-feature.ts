import { type DocumentLink, DocumentLinkRequest } from 'vscode-languageserver'
import { rangeOf } from '../../job/document.ts'
import { feature } from '../feature.ts'
import { linksOf } from './document-links.ts'

export const documentLinksFeature = feature(
  DocumentLinkRequest.type,
  { documentLinkProvider: {} },
  ({ workspace, open, docs }) =>
    linksOf(workspace.link(open)).flatMap((link): DocumentLink[] => {
      const range = rangeOf(open.document, link.at)
      if ('path' in link) {
        const target = workspace.uriAt(open, link.path)
        return target === undefined ? [] : [{ range, target, tooltip: 'Open the file' }]
      }
      return docs === undefined
        ? []
        : [{ range, target: `${docs}${link.check}.md`, tooltip: 'Open the page of the check' }]
    }),
)
