import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import { goTo, hints, lenses, openFile, problems, squiggle } from './support/person.ts'

const count = (texts: readonly string[], words: RegExp): number =>
  texts.filter((text) => words.test(text)).length

describe('a verdict near its place', () => {
  it('is said by the finding alone where there is one, in the first line of Problems', async () => {
    const job = 'survey-launch-as-found.wright'
    await openFile(job)
    await goTo(job, 'reading dry-1')
    await squiggle('error')
    const over = await lenses()
    assert.ok(over.some((text) => text.includes('Plan')))
    assert.equal(count(over, /0\.26|outside|limit/i), 0, over.join('\n'))
    const beside = await hints()
    assert.equal(count(beside, /0\.26|outside|within| in\)/), 0, beside.join('\n'))
    const listed = await problems('0.10 mm is allowed')
    // Files that other tests left have theirs.
    const files = listed.filter((row) => /\.wright\d+$/.test(row)).length
    assert.ok(files > 0)
    assert.equal(count(listed, /0\.26 ± 0\.02 mm; 0\.10 mm is allowed\./), files, listed.join('\n'))
  })

  it('is said by the line over a reading that is within, and nowhere else', async () => {
    const job = 'survey-launch-as-built.wright'
    await openFile(job)
    await goTo(job, 'reading dry-2')
    const over = await lenses()
    // One line over each reading; the other one that is within has the same figures.
    assert.equal(count(over, /^Within: 0\.03, limit 0\.10 mm.*Since dry-1/), 1, over.join('\n'))
    const beside = await hints()
    assert.equal(count(beside, /within|outside| in\)/), 0, beside.join('\n'))
    assert.ok(beside.length > 0, 'a move or a cable has a hint')
  })
})
