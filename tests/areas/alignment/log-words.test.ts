// The log of the demo, from reading to reading. Its figures are worked out in docs/engineering/alignment.md.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { logUpTo } from '../../../server/src/areas/alignment/plans/log.ts'
import { logText, sparkline } from '../../../server/src/areas/alignment/plans/log-words.ts'
import { blockIn } from '../job-text.ts'

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
    expect(lines[4]).toContain('Matches the moves since dry-1')
    expect(lines[5]).toMatch(/afloat-1 +2026-03-19 +afloat .*within$/)
    expect(lines[6]).toContain('the boat changed shape')
  })

  it('shows a move that is only planned, and that it is not marked as done', () => {
    const text = readFileSync('docs/examples/survey-launch-as-built.wright', 'utf8')
    const undone = blockIn(text.replace(/( move after dry-1 \{\n) +done:.*\n/, '$1'), 'main.afloat-1')
    const lines = logText('main', logUpTo(undone.block, undone.lookup), 'metric').split('\n')
    expect(lines[2]).toMatch(/^ +planned, not marked as done: aft-port, aft-stbd up 1 flat/)
    expect(lines.join()).not.toContain('then aft-port')
  })

  it('is drawn, bar by bar, against what is allowed', () => {
    // 0.2608, 0.0283 and 0.0283 mm of 0.10 mm: √(0.26² + 0.02²), √(0.02² + 0.02²).
    expect(sparkline(log)).toBe('█▁▁ 2.6 → 0.28 → 0.28 of the allowed gap variation')
    expect(sparkline(log.slice(0, 1))).toBeUndefined()
  })
})
