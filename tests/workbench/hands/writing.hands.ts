import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import {
  askForSuggestions,
  goTo,
  hover,
  lenses,
  openFile,
  press,
  problems,
  savedText,
  squiggle,
  type,
} from './support/person.ts'

describe('a person at the keyboard', () => {
  it('types into an empty file and saves it', async () => {
    await openFile('typed.wright', '')
    await type('battery house {\nchemistry: LFP')
    assert.equal(await savedText('typed.wright'), 'battery house {\n  chemistry: LFP\n}')
  })

  it('takes what is suggested', async () => {
    await openFile('taken.wright', 'drive main {\n  coupling {\n    \n  }\n}\n')
    await goTo('taken.wright', '\n    ')
    assert.ok((await askForSuggestions()).includes('kind'))
    await type('kind')
    await press('Tab')
    assert.match(await savedText('taken.wright'), /\n {4}kind: /)
  })

  it('sees findings, a hover and lenses', async () => {
    await openFile('survey-launch-as-found.wright')
    await goTo('survey-launch-as-found.wright', 'reading dry-1')
    await squiggle('error')
    assert.match(await hover('reading'), /limits/)
    assert.ok((await lenses()).some((lens) => lens.includes('Plan')))
    assert.ok((await problems('gap variation')).some((row) => row.includes('0.26')))
    await press('Control+j')
  })
})
