// What the figures of a job come to, with its findings.
import { isResult, type Result, resultsOf } from '../../server/src/areas/common/result.ts'
import { allChecks, allFigures } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import type { Block } from '../../server/src/job/model.ts'
import { lookupFrom } from '../../server/src/store/store.ts'

export const today = '2026-11-30'

interface Found extends Result {
  readonly block: Block
}

export function resultsIn(text: string) {
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  const analysis = new Analysis()
  analysis.begin()
  const findings = new Checker(analysis, allChecks).check(file, { today })
  const all = (blocks: readonly Block[]): readonly Block[] => blocks.flatMap((b) => [b, ...all(b.children)])
  const results = all(analysis.blocks(file)).flatMap((block): readonly Found[] =>
    resultsOf(allFigures, lookupFrom(block, { analysis, file }), { file, findings: () => findings })
      .filter(isResult)
      .map((result) => ({ ...result, block })),
  )
  return { file, analysis, findings, results }
}
