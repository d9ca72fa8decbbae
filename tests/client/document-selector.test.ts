import { expect, it } from 'vitest'
import { documentSelector } from '../../client/src/document-selector.ts'

// Schemes as VS Code has them: `git` and `gitfs` for an older version, `vscode-vfs` for a repository that was not cloned.
it('selects what is written, on disk, not yet saved or in an open folder, and no older version', () => {
  const schemes = (folders: readonly string[]) => documentSelector(folders).map(({ scheme }) => scheme)
  const everywhere = ['file', 'untitled', 'vscode-remote', 'vscode-vfs']
  expect(schemes([])).toEqual(everywhere)
  expect(schemes(['file', 'memfs', 'memfs'])).toEqual([...everywhere, 'memfs'])
  expect(documentSelector([]).every(({ language }) => language === 'shaftwright')).toBe(true)
})
