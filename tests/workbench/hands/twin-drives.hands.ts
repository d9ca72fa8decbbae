import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import {
  goTo,
  hover,
  lineOfCursor,
  openFile,
  press,
  problems,
  savedText,
  squiggle,
  type,
} from './support/person.ts'

const port = `drive port {
  propeller { diameter: 480 mm  turns: left-hand }
  shaft { diameter: 40 mm }
}
`

describe('a person who writes the second of two drives', () => {
  it('says what it is like and what differs, and is led to where the rest is written', async () => {
    const name = 'twins.wright'
    await openFile(name, `${port}\n`)
    await goTo(name, `${port}\n`)
    await type('drive starboard {\nlike: port\npropeller {\ndiameter: 500 mm', { delay: 30 })
    const text = await savedText(name)
    assert.equal(
      text.replaceAll(/\s+/g, ' ').trim(),
      `${port}drive starboard { like: port propeller { diameter: 500 mm } }`.replaceAll(/\s+/g, ' '),
    )
    await squiggle('warning')
    assert.ok((await problems('not-taken')).some((row) => row.includes('propeller')))
    await press('Control+j')
    await goTo(name, 'like: port')
    assert.match(await hover('starboard'), /from port\.shaft|starboard/)
    await goTo(name, 'like: po')
    await press('F12')
    await lineOfCursor('drive port')
    await press('End')
    await type(' # here')
    assert.match(await savedText(name), /^drive port \{ # here\n/)
  })
})
