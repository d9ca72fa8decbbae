// The log of the demo, from reading to reading. Its figures are worked out in docs/engineering/alignment.md.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { logUpTo } from '../../server/src/plans/alignment-log.ts'
import { logText, sparkline } from '../../server/src/plans/alignment-log-words.ts'
import { blockIn } from './job-text.ts'

describe('the log of the demo', () => {
  const { block, lookup } = blockIn(
    readFileSync('docs/examples/survey-launch-as-built.wright', 'utf8'),
    'main.afloat-1',
  )
  const log = logUpTo(block, lookup)

  it('goes from the first reading to within', () => {
    const lines = logText('main', log, 'metric').split('\n')
    expect(lines[1]).toMatch(/dry-1 +2026-03-04 +dry +gap variation 0\.26, limit 0\.10 mm +offset .*outside$/)
    expect(lines[2]).toContain('then aft-port, aft-stbd up 1 flat')
    expect(lines[3]).toMatch(/dry-2 .*within$/)
    expect(lines[4]).toContain('As the moves since dry-1 should have brought it')
    expect(lines[5]).toMatch(/afloat-1 +2026-03-19 +afloat .*within$/)
    expect(lines[6]).toContain('the boat changed shape')
  })

  it('is drawn, bar by bar, against what is allowed', () => {
    // 0.2608, 0.0283 and 0.0283 mm of 0.10 mm: √(0.26² + 0.02²), √(0.02² + 0.02²).
    expect(sparkline(log)).toBe('█▁▁ 2.6 → 0.28 → 0.28 of the gap variation allowed')
    expect(sparkline(log.slice(0, 1))).toBeUndefined()
  })
})
