import { expect, it } from 'vitest'
import { documentSelector, revisionSchemes } from '../../client/src/document-selector.ts'

// Schemes as VS Code has them: `git` for an older revision, `vscode-vfs` for a repository that was not cloned.
it('selects what is written, on disk, not yet saved or in an open folder, and older revisions', () => {
  const schemes = (folders: readonly string[]) => documentSelector(folders).map(({ scheme }) => scheme)
  const everywhere = ['file', 'untitled', 'vscode-remote', 'vscode-vfs']
  expect(schemes([])).toEqual([...everywhere, ...revisionSchemes])
  expect(revisionSchemes).toContain('git')
  expect(schemes(['file', 'memfs', 'memfs'])).toEqual([...everywhere, 'memfs', ...revisionSchemes])
  expect(documentSelector([]).every(({ language }) => language === 'shaftwright')).toBe(true)
})
