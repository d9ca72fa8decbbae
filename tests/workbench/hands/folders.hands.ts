// Another program changes the folder of a library while the job is open.
import { cpSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { describe, it } from 'mocha'
import { openFile, squiggle } from './support/person.ts'
import { folder, page } from './support/session.ts'

const parts = join(folder, 'parts')
const away = join(folder, '../parts')

describe('the folder of a library', () => {
  for (const [what, leave] of [
    ['renames it', () => renameSync(parts, join(folder, 'renamed'))],
    ['deletes it', () => rmSync(parts, { recursive: true })],
  ] as const)
    it(`is missed when another program ${what}, and found again`, async () => {
      cpSync(parts, away, { recursive: true })
      await openFile('twin-screw-ferry.wright')
      // The lenses of its readings are further down.
      await page.keyboard.press('Control+End')
      await page.locator('.codelens-decoration:visible').first().waitFor()
      await page.keyboard.press('Control+Home')
      leave()
      await squiggle('error')
      rmSync(join(folder, 'renamed'), { recursive: true, force: true })
      renameSync(away, parts)
      await page.locator('.editor-instance .squiggly-error').first().waitFor({ state: 'hidden' })
    })
})
