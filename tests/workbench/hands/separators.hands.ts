import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import { openFile, press, runCommand, savedText, squiggle, type } from './support/person.ts'
import { page } from './support/session.ts'

/** What the menu of quick fixes offers at the cursor, top to bottom. */
const offers = async (): Promise<readonly string[]> => {
  await press('ControlOrMeta+.')
  const rows = page.locator('.action-widget .monaco-list-row.action')
  await rows.first().waitFor()
  return (await rows.allTextContents()).map((text) => text.replaceAll('\u00a0', ' ').trim())
}

describe('a number with separators', () => {
  it('that can be read two ways is offered both, and Fix All leaves it alone', async () => {
    await openFile('separators.wright', 'drive main {\n  motor main {\n    \n  }\n}\n')
    await press('ArrowDown', 'ArrowDown', 'End')
    await type('power: 15,000 W')
    await press('Escape')
    await squiggle('error')
    const offered = await offers()
    assert.deepEqual(
      offered.filter((title) => title.startsWith('Write')),
      ['Write 15000 W (15 kW)', 'Write 15 W'],
    )
    await press('Escape')
    await runCommand('Fix All')
    assert.match(await savedText('separators.wright'), /power: 15,000 W/)
  })

  it('that is far more likely in thousands is asked about', async () => {
    await openFile('points.wright', 'drive main {\n  motor main {\n    \n  }\n}\n')
    await press('ArrowDown', 'ArrowDown', 'End')
    await type('power: 15.000 W')
    await press('Escape')
    await squiggle('warning')
    assert.deepEqual(
      (await offers()).filter((title) => title.startsWith('Write')),
      ['Write 15000 W (15 kW)', 'Write 15 W'],
    )
    await press('Escape')
  })

  it('that can be read one way is fixed with all others of its line by Fix All', async () => {
    await openFile('decimals.wright', 'drive main {\n  reading dry-1 {\n    \n  }\n}\n')
    await press('ArrowDown', 'ArrowDown', 'End')
    await type('gaps: top 1,92 mm, starboard 1,80 mm, bottom 1,66 mm')
    await press('Escape')
    await squiggle('error')
    await runCommand('Fix All')
    await page.locator('.view-line').filter({ hasText: /1\.66/ }).waitFor()
    assert.match(
      await savedText('decimals.wright'),
      /gaps: top 1\.92 mm, starboard 1\.80 mm, bottom 1\.66 mm/,
    )
  })
})
