import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, it } from 'mocha'
import { randomFrom } from '../../fuzz/random.ts'
import { randomJob } from './support/random-job.ts'
import { folder } from './support/session.ts'
import { openEmpty, typeHeadingWithTab, typeJob } from './support/typist.ts'

// Some 16,000 keys: under four minutes on two free cores.
describe('what is typed is what is in the editor', () => {
  it('of a demo job', async () => {
    await openEmpty()
    await typeJob(readFileSync(join(folder, 'inch-day-boat.wright'), 'utf8'))
  }).timeout(900_000)

  it('of fifty jobs in any order', async () => {
    await openEmpty()
    for (let seed = 1; seed <= 50; seed++) await typeJob(randomJob(randomFrom(seed), 25).join('\n'))
  }).timeout(1_800_000)

  it('of headings that end with Tab', async () => {
    await openEmpty()
    for (const heading of ['drive port', 'foot aft-port', 'reading dry-1', 'move after dry-1', 'cable feed'])
      await typeHeadingWithTab(heading)
  })
})
