// The words of findings keep one shape: what is wrong in one line, then limit and source, then what to do, in plain English. Common practice, no source.
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { randomElectrics } from '../areas/electrical/random-electrics.ts'
import { randomDrive } from '../areas/random-drive.ts'
import { randomFrom } from '../fuzz/random.ts'
import { findingsOf } from './marks.ts'
import { wordingFaults } from './wording.ts'

const worded = (text: string, others: Readonly<Record<string, string>> = {}) =>
  findingsOf(text, allChecks, { others }).findings

const examples = path.resolve(import.meta.dirname, '../../docs/examples')
const read = (file: string) => readFileSync(path.join(examples, file), 'utf8')
const parts = Object.fromEntries(
  readdirSync(path.join(examples, 'parts')).map((file) => [`parts/${file}`, read(`parts/${file}`)]),
)
const demos = readdirSync(examples).filter((file) => file.endsWith('.wright'))

describe('the words of a finding', () => {
  it.each(allChecks.map((c) => [c.id, c] as const))('%s', (_, { fires }) => {
    for (const finding of worded(fires))
      expect(wordingFaults(finding), `${finding.check}: ${finding.message}`).toEqual([])
  })

  it.each(demos)('in %s', (file) => {
    for (const finding of worded(read(file), parts))
      expect(wordingFaults(finding), `${finding.check}: ${finding.message}`).toEqual([])
  })

  it.each([
    ['electrical', randomElectrics],
    ['alignment', randomDrive],
  ] as const)('in 100 random %s jobs', (_, make) => {
    const random = randomFrom(7)
    for (let i = 0; i < 100; i++)
      for (const finding of worded(make(random)))
        expect(wordingFaults(finding), `${finding.check}: ${finding.message}`).toEqual([])
  })
})
