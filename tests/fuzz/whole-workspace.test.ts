import 'vscode-languageserver/node'
import fc from 'fast-check'
import { it } from 'vitest'
import { wholeWorkspace } from './whole-workspace.ts'

it('what is asked of a whole workspace is answered as by a full read', { timeout: 120_000 }, async () => {
  await fc.assert(wholeWorkspace, { numRuns: 200 })
})
