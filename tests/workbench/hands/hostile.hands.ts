// Jobs of somebody who means harm, in a folder that is not trusted. `npm run test:hands -- --web hostile` tries the same in the browser's own extension host.
import assert from 'node:assert/strict'
import { readFileSync, symlinkSync, unlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, describe, it } from 'mocha'
import { goTo, openFile, press, problems, squiggle } from './support/person.ts'
import { asked, folder, page } from './support/session.ts'
import { seen } from './support/shown.ts'

const marked =
  '![i](https://evil.example/p.png)<img src="https://evil.example/h.png"><a href="command:workbench.action.reloadWindow">x</a>' +
  '[x](command:workbench.action.reloadWindow) https://evil.example/a www.evil.example $(alert) <https://evil.example/b>'
/** What steers a terminal (ECMA-48), and what turns the order of the signs behind it (Unicode Standard Annex 9). */
const turning = '\u001B]0;owned\u0007\u009B31m\u202Eevil'

/** The same, as it is or as VS Code names it in an editor. The end of a line is none. */
const turns = /(?!\n)\p{Cc}|\p{Bidi_Control}|U\+202E/u

/** A demo job with a text at each place that may hold one. */
const holding = (text: string): string => {
  const quoted = `"${text.replaceAll(/[\\"]/g, '\\$&')}"`
  return readFileSync(join(folder, 'survey-launch-as-built.wright'), 'utf8')
    .replaceAll(/"[^"\n]*"/g, () => quoted)
    .replace(/thread: +M16/, () => `thread: ${quoted}`)
}

/** What the hover says at some words of the open file. */
const hoverAt = async (name: string, words: string): Promise<string> => {
  await goTo(name, words)
  const shown = page.locator('.monaco-hover:visible').filter({ has: page.locator('.hover-row') })
  for (let tries = 1; ; tries++) {
    await press('Control+k', 'Control+i')
    try {
      await shown.filter({ hasNotText: 'Loading...' }).first().waitFor({ timeout: 5_000 })
      return (await shown.allTextContents()).join('\n')
    } catch (error) {
      // It closes when something else is painted meanwhile.
      if (tries === 10) throw error
      await press('Escape')
    }
  }
}

const planLines = `.editor-group-container:has(.tab[data-resource-name^="Plan of"]) .view-line`

describe('in a folder that is not trusted', () => {
  let tried = 0
  afterEach(async () => {
    // The server still answers, of a file that it has not seen, and nothing was asked of another machine.
    tried += 1
    await openFile(`next-${tried}.wright`, 'next {\n}\n')
    await squiggle('error')
    assert.deepEqual(asked, [])
  })

  it('VS Code says so', async () => {
    await page.locator('.statusbar-item').getByText('Restricted Mode').waitFor()
  })

  it('texts of a job are shown as texts in hovers, lenses, findings and the plan', async () => {
    const name = 'texts.wright'
    const text = holding(marked + turning)
    await openFile(name, text)
    let ours = 0
    for (const words of ['thread: "', 'reading dry-2']) {
      const said = await hoverAt(name, words)
      assert.doesNotMatch(said, turns)
      const found = await seen()
      assert.deepEqual(found.foreign, [], words)
      ours += found.ours
      await press('Escape')
    }
    assert.ok(ours > 0, 'links are found where there are some')
    await goTo(name, 'reading dry-2')
    await press('Control+k', 'v')
    const vessel = page.locator(planLines).filter({ hasText: 'Vessel:' })
    await vessel.waitFor()
    assert.doesNotMatch((await page.locator(planLines).allTextContents()).join('\n'), turns)
    await problems('cannot be read as a thread')
    assert.deepEqual((await seen()).foreign, [])
  })

  it('a file outside of it is not read, by a path, a link, an address or a command', async () => {
    const library = 'shaft outside-stock { diameter: 41 mm }\n'
    writeFileSync(join(folder, '../outside.wright'), library)
    symlinkSync(join(folder, '..'), join(folder, 'up'))
    symlinkSync(join(folder, '../outside.wright'), join(folder, 'linked.wright'))
    const ways = [
      ...['../outside.wright', join(folder, '../outside.wright'), 'up/outside.wright', 'linked.wright'],
      ...[`file://${folder}/../outside.wright`, 'https://evil.example/outside.wright'],
      ...['command:workbench.action.reloadWindow', '[x](command:workbench.action.reloadWindow)'],
    ]
    const name = 'ways.wright'
    await openFile(name, `${ways.map((way) => `use "${way}"\n`).join('')}shaft own { like: outside-stock }\n`)
    assert.match((await problems('outside-stock')).join('\n'), /Nothing here is called outside-stock/)
    assert.deepEqual((await seen()).foreign, [])
    assert.doesNotMatch(await hoverAt(name, 'like: outside'), /41/)
    for (const link of ['up', 'linked.wright']) unlinkSync(join(folder, link))
  })

  it('96,000 dots in a name are a finding', async () => {
    await openFile('dots.wright', `shaft s { length: 1 mm diameter: ${'s.'.repeat(96_000)}s }\n`)
    await squiggle('error')
  })
})
