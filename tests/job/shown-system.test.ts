// The units that results are shown in. Design decision, no source.
import { describe, expect, it } from 'vitest'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'

const shownIn = (text: string) =>
  new Analysis().scope(linkFile('a.wright', openDocument(text), () => undefined)).system()

const job = (facts = '') => `job "x" { vessel: "v"  ${facts} }\n`
const drive = (name: string, unit: string) => `drive ${name} {
  coupling { flange-diameter: 125 mm }
  reading a { taken: 2026-03-04  gauge: 0.001 ${unit}  gaps: top 0.08 ${unit}, 30 deg 0.07 ${unit} }
}
`

describe('results are shown', () => {
  it.each([
    ['in inches where all readings are', job() + drive('a', 'in'), 'inch'],
    ['in inches where they are in thou', job() + drive('a', 'thou'), 'inch'],
    ['in inches where both drives are', job() + drive('a', 'in') + drive('b', 'in'), 'inch'],
    ['in metric units where one of two drives is', job() + drive('a', 'in') + drive('b', 'mm'), 'metric'],
    ['in metric units where the readings are', job() + drive('a', 'mm'), 'metric'],
    ['in metric units without readings', `${job()}drive a { shaft { diameter: 1-1/4 in } }`, 'metric'],
    ['as the job says: metric', job('show-in: metric') + drive('a', 'in'), 'metric'],
    ['as the job says: inch', job('show-in: inch') + drive('a', 'mm'), 'inch'],
    ['as they are read where the job does not say it yet', job('show-in: ?') + drive('a', 'in'), 'inch'],
    ['in inches in a file without a job', drive('a', 'in'), 'inch'],
    ['in metric units in an empty file', '', 'metric'],
  ] as const)('%s', (_title, text, system) => expect(shownIn(text)).toBe(system))
})
