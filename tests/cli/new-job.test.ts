import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { vesselFault } from '../../server/src/editor/client-requests.ts'
import { newJobText } from '../../server/src/editor/new-job/new-job.ts'
import { findingsOf } from '../checks/marks.ts'
import { factValue, read } from '../job/meaning.ts'
import { shaftwright } from './run-cli.ts'

describe('new', () => {
  it('prints a job to fill in', () => {
    const { code, out } = shaftwright([
      'new',
      'Launch 08',
      '--drives',
      '2',
      '--units',
      'inch',
      '--feet',
      'shims',
    ])
    expect(code).toBe(0)
    expect(out).toBe(newJobText({ vessel: 'Launch 08', drives: 2, units: 'inch', feet: 'shims' }))
  })

  it('knows no other number of drives', () => {
    expect(shaftwright(['new', 'Launch 08', '--drives', '3']).code).toBe(2)
  })

  it('refuses an empty name with the exit code for wrong usage, and prints no job', () => {
    const { code, out, err } = shaftwright(['new', ''])
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain('Enter the name of the vessel.')
  })

  it('leaves out spaces before and after a name', () => {
    const { out } = shaftwright(['new', ' Launch 08 '])
    expect(out).toBe(newJobText({ vessel: 'Launch 08', drives: 1, units: 'metric', feet: 'studs' }))
  })
})

describe('the name of a vessel', () => {
  it.each([
    ['', 'Enter the name of the vessel.'],
    ['   ', 'Enter the name of the vessel.'],
    ['\t\n', 'Enter the name of the vessel.'],
    ['\u200b', 'Enter the name of the vessel.'],
    ['Launch\n08', 'A name cannot contain line breaks or control characters.'],
    ['Launch\u001b[31m', 'A name cannot contain line breaks or control characters.'],
    ['Launch\u0000', 'A name cannot contain line breaks or control characters.'],
    ['Launch\u2028', 'A name cannot contain line breaks or control characters.'],
    ['L'.repeat(101), 'A name has 100 characters at most.'],
  ])('cannot be %j', (name, words) => {
    expect(vesselFault(name)).toBe(words)
  })

  it.each(['Launch "Seven"', 'Launch \\7\\', '# {Launch}: 8', '?', 'L'.repeat(100), '轴 8', 'Måke’s boat'])(
    'may be %j, and the new job is whole',
    (vessel) => {
      expect(vesselFault(vessel)).toBeUndefined()
      const text = newJobText({ vessel, drives: 2, units: 'inch', feet: 'shims' })
      expect(factValue(read(text).blocks, 'job.vessel')).toBe(vessel)
      expect(findingsOf(text, allChecks).findings.filter(({ severity }) => severity === 'error')).toEqual([])
    },
  )
})
