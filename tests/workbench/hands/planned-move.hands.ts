import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, it } from 'mocha'
import {
  goTo,
  lineOfCursor,
  openFile,
  press,
  problems,
  quickFix,
  savedText,
  squiggle,
  type,
} from './support/person.ts'
import { folder } from './support/session.ts'

const job = 'to-move.wright'
const found = readFileSync(join(folder, 'survey-launch-as-found.wright'), 'utf8')

describe('the move of the plan', () => {
  it('is written as planned, asks for its day, and is made when the person says so', async () => {
    await openFile(job, found)
    await goTo(job, 'gaps:    top 1.92')
    await squiggle('error')
    await quickFix('Write this move')
    const planned = await savedText(job)
    assert.match(planned, /move after dry-1 \{\n\s+aft-port: /)
    assert.doesNotMatch(planned, /done:|by:/)
    const listed = await problems('planned')
    assert.ok(
      listed.some((row) => row.includes('This move after dry-1 is planned.')),
      listed.join('\n'),
    )
    await press('Control+j')

    await goTo(job, 'move after')
    await quickFix('It was made today')
    await lineOfCursor('by:')
    await type('Demo fitter')
    assert.match(
      await savedText(job),
      /move after dry-1 \{\n\s+done: +\d{4}-\d\d-\d\d\n\s+by: +"Demo fitter"\n/,
    )
    const left = await problems('move')
    assert.ok(!left.some((row) => row.includes('is planned.')), left.join('\n'))
    await press('Control+j')
  })
})
