import { describe, expect, it } from 'vitest'
import { generatedFiles, staleFiles } from '../../server/tools/generate/files.ts'

describe('generated files', () => {
  it('are as their declarations make them, and none is left behind', { timeout: 60_000 }, async () => {
    expect(staleFiles(await generatedFiles())).toEqual([])
  })
})
