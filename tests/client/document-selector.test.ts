import { expect, it } from 'vitest'
import { documentSelector } from '../../client/src/document-selector.ts'

// Schemes as VS Code has them: `git` and `gitfs` for an older version, `vscode-vfs` for a repository that was not cloned.
it('selects what is written, on disk, not yet saved or in an open folder, and no older version', () => {
  const schemes = (folders: readonly string[]) => documentSelector(folders).map(({ scheme }) => scheme)
  expect(schemes([])).toEqual(['file', 'untitled'])
  expect(schemes(['file', 'vscode-vfs', 'vscode-vfs'])).toEqual(['file', 'untitled', 'vscode-vfs'])
  expect(documentSelector([]).every(({ language }) => language === 'shaftwright')).toBe(true)
})
