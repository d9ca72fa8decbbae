// How many keys a job takes that was written on paper before.
import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import { allChecks } from '../../../server/src/areas/index.ts'
import { Checker } from '../../../server/src/checks/run.ts'
import { newJobText } from '../../../server/src/editor/new-job/new-job.ts'
import { Analysis } from '../../../server/src/job/analysis.ts'
import { openDocument } from '../../../server/src/job/document.ts'
import { linkFile } from '../../../server/src/job/files.ts'
import { formatText } from '../../../server/src/syntax/format.ts'
import { openFile, savedText } from './support/person.ts'
import { page } from './support/session.ts'

/** A value of the spec; with `keys`, what is typed until the list of suggestions has it. */
type Value = string | { readonly value: string; readonly keys: string }
const pick = (value: string, keys = value.slice(0, 1)): Value => ({ value, keys })
const textOf = (of: Value): string => (typeof of === 'string' ? of : of.value)

/** The specification on paper, invented, in the order in which a new job asks for it. */
const job: readonly Value[] = [
  '"A"',
  pick('iso'),
  pick('insulated'),
  pick('outward'),
  '96',
  '84',
  '108',
  '210',
  '14',
]
const port: readonly Value[] = [
  '0.8',
  ...['420', '300', '3', pick('left-hand')],
  ...['35', '2.65', 'duplex'],
  ...['0.21', pick('water-lubricated'), '140', '35.2'],
  '60',
  ...['35', '24', '29', '148', '121'],
  ...[pick('flexible'), '125', '110', '0.1', '0.15', '400'],
  ...['2.5', pick('opposite')],
  ...['15', '1500', '58', '0.9', '92', 'U, V, W', pick('clockwise', 'cl'), 'F'],
  ...['72', '120', 'A, B, C', '6.8', '220', 'pt1000', '96'],
  ...['M16', '180', '140', '180', '140', '560', '140', '560', '140'],
  ...['95', '2.5', '105', pick('machinery-space'), '2', '600'],
  ...[pick('fuse'), '315', '150', '20', '125'],
  ...['350', '125', '400', pick('both')],
  ...['70', '1.8', '105', pick('machinery-space'), '3', '600'],
  ...['A', 'U', 'B', 'V', 'C', 'W'],
  ...['2026-03-04', 'no', '0.02'],
  ...['1.92', '1.8', '1.66', '1.78', '0.06', '-0.02', '-0.05', '0.03'],
]
const starboard: readonly Value[] = [
  '0.8',
  pick('right-hand'),
  ...['147', '120'],
  ...['A', 'U', 'B', 'W', 'C', 'V'],
  ...['2026-03-04', 'no', '0.02'],
  ...['1.84', '1.8', '1.76', '1.8', '0.02', '0.01', '-0.02', '-0.01'],
]

let keys = 0
const press = async (key: string): Promise<void> => {
  keys += 1
  await page.keyboard.press(key)
}
const type = async (text: string): Promise<void> => {
  for (const key of text) await press(key)
}

const selectedBlank = page.locator('.statusbar-item').filter({ hasText: '(1 selected)' })
/** Goes to a blank from outside the blanks. The status bar is slow: it may still tell of what was selected before. */
const goToBlank = async (): Promise<void> => {
  await selectedBlank.waitFor({ state: 'hidden' })
  await press('Tab')
  await selectedBlank.waitFor()
}

const suggestion = page.locator('.suggest-widget.visible .monaco-list-row.focused')

/** Types a value and goes on, waiting for nothing: a fast typist does not look up. */
const write = async (value: Value): Promise<void> => {
  if (typeof value === 'string') return type(value)
  await type(value.keys)
  await suggestion.filter({ hasText: value.value }).waitFor()
  await press('Tab')
}

const fillIn = async (values: readonly Value[]): Promise<void> => {
  for (const [i, value] of values.entries()) {
    if (i > 0) await press('Tab')
    await write(value)
  }
}

const asked = { vessel: 'Ferry 3', drives: 2, units: 'metric', feet: 'studs' } as const

describe('a new job', () => {
  it('of two drives takes few keys', async function () {
    // Some five hundred keys, each of them waited for on a busy machine.
    this.timeout(900_000)
    await press('F1')
    await page.locator('.quick-input-widget:visible input').waitFor()
    await type('new job')
    await page.locator('.quick-input-list .monaco-list-row.focused').filter({ hasText: 'New Job' }).waitFor()
    await press('Enter')
    await page.locator('.quick-input-widget:visible input[placeholder="Launch 07"]').waitFor()
    await type(asked.vessel)
    await press('Enter')
    await page.locator('.quick-input-widget:visible').filter({ hasText: 'Two drives' }).waitFor()
    await press('ArrowDown')
    await press('Enter')
    await page.locator('.quick-input-widget:visible').filter({ hasText: 'Metric' }).waitFor()
    await press('Enter')
    await page.locator('.quick-input-widget:visible').filter({ hasText: 'Studs' }).waitFor()
    await press('Enter')
    await selectedBlank.waitFor()

    await fillIn([...job, ...port])
    const first = keys
    await press('Tab')
    await fillIn(starboard)
    const second = keys - first
    console.log(`      keys: first drive ${first}, second drive ${second}`)

    const text = await savedText('ferry-3.wright')
    const values = [...job, ...port, ...starboard].map(textOf)
    const wanted = newJobText(asked).replaceAll('?', () => values.shift() ?? '?')
    assert.equal(formatText(text), formatText(wanted))
    assert.deepEqual(values, [])
    const errors = errorsOfWriting(text)
    assert.deepEqual(errors, [])
    assert.ok(first < 450, `${first} keys for the first drive`)
    assert.ok(second < 100, `${second} keys for the second drive`)
  })

  it('takes whole words and units that are typed though they stand there, and one undo takes one value', async () => {
    await openFile('words.wright', 'propeller {\n  pitch: ? mm\n  turns: ?\n}\nshaft {\n  length: ? m\n}\n')
    await page.keyboard.press('End')
    await goToBlank()
    await type('300')
    await press('Tab')
    await type('l')
    await suggestion.waitFor()
    await type('eft-hand')
    await press('Tab')
    await type('2.65')
    assert.match(await savedText('words.wright'), /pitch: 300 mm\n {2}turns: left-hand\n.*length: 2\.65 m\n/s)
    await page.keyboard.press('ControlOrMeta+z')
    assert.match(await savedText('words.wright'), /pitch: 300 mm\n {2}turns: left-hand\n.*length: \? m\n/s)
  })

  it('has its blanks gone through also after a line was deleted, and lines indented as ever', async () => {
    await openFile('blanks.wright', 'propeller {\n  diameter: ? mm\n  pitch:    ? mm\n  blades:   ?\n}\n')
    await page.keyboard.press('End')
    await goToBlank()
    await type('420')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ControlOrMeta+Shift+k')
    await goToBlank()
    await type('3')
    await page.keyboard.press('Home')
    await page.keyboard.press('Home')
    await page.keyboard.press('Tab')
    assert.equal(await savedText('blanks.wright'), 'propeller {\n  diameter: 420 mm\n    blades:   3\n}\n')
  })
})

function errorsOfWriting(text: string): readonly string[] {
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('ferry-3.wright', openDocument(text), () => undefined)
  return new Checker(analysis, allChecks)
    .check(file, { today: '2026-03-09' })
    .filter(({ check, severity }) => severity === 'error' && check.startsWith('job/'))
    .map(({ check, message }) => `${check}: ${message}`)
}
