// npm run type:demos: every demo job, key by key.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, it } from 'mocha'
import { folder } from '../support/session.ts'
import { openEmpty, typeJob } from '../support/typist.ts'

const demos = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.wright'))
  .sort()

describe('what is typed is what is in the editor, demo by demo', () => {
  for (const name of demos) {
    const text = readFileSync(join(folder, name), 'utf8')
    it(`${name}, ${text.length} characters`, async () => {
      await openEmpty()
      await typeJob(text)
    }).timeout(1_800_000)
  }
})
