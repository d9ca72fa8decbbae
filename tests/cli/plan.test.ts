import fs from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { planSchema } from '../../server/src/areas/alignment/commands/plan-schema.ts'
import { built, ferry, folder, found, held, packageVersion, put, root, shaftwright } from './run-cli.ts'

describe('plan', () => {
  it('prints the moves in words and as its schema says', () => {
    const { code, out } = shaftwright(['plan', found])
    expect(code).toBe(0)
    expect(out).toContain('fwd-stbd  up 1.27 ± 0.08 mm')
    const json = planSchema.parse(
      held('plan.schema.json', shaftwright(['plan', found, '--format', 'json']).out),
    )
    expect(json).toMatchObject({
      version: 2,
      tool: { name: 'shaftwright', version: packageVersion },
      file: found,
      job: { vessel: 'Launch 07', revision: 'B', status: 'for-review' },
      plans: [{ drive: 'main', reading: 'dry-1', fault: null, verdict: 'outside' }],
    })
  })

  it('says above it whose plan it is, of which day and from which file', () => {
    expect(shaftwright(['plan', found, '--today', '2026-06-01']).out).toMatch(
      /^Vessel: +Launch 07\nJob: +Survey launch 07: electric repower\nRevision: +B \(for-review\)\nDate: +2026-06-01\nFile: +docs\/examples\/survey-launch-as-found\.wright\n\nmain dry-1: /,
    )
    const name = put('bare.wright', 'drive d { }\njob "a\u001b[31m" { }\n')
    expect(shaftwright(['plan', name], folder).out).toMatch(
      /^Vessel: +not stated\nJob: +a␛\[31m\nRevision: +not stated \(status not stated\)\n/,
    )
  })

  it('takes the last reading, and plans every drive when none is named', () => {
    expect(shaftwright(['plan', built]).out).toContain('main afloat-1: within its limits')
    expect(shaftwright(['plan', built, '--reading', 'dry-1']).out).toContain('main dry-1: outside')
    const twin = shaftwright(['plan', ferry])
    expect(twin.code).toBe(0)
    expect(twin.out).toMatch(
      /^Drive port\n={10}\nport dry-1: within [\s\S]*^Drive starboard\n={15}\nstarboard dry-1: within /m,
    )
    expect(twin.out.match(/^Vessel:/gm)?.length).toBe(1)
    const { plans } = planSchema.parse(
      held('plan.schema.json', shaftwright(['plan', ferry, '--format', 'json']).out),
    )
    expect(plans.map(({ drive, reading }) => `${drive} ${reading}`)).toEqual([
      'port dry-1',
      'starboard dry-1',
    ])
    const one = shaftwright(['plan', ferry, '--drive', 'port'])
    expect(one.code).toBe(0)
    expect(one.out).not.toMatch(/^Drive port$|starboard dry-1/m)
  })

  it('plans what it can, says what it cannot, and ends with 1', () => {
    const text = fs.readFileSync(path.join(root, ferry), 'utf8')
    const name = put('half.wright', `${text.replaceAll(/^use .*$/gm, '')}\ndrive spare { }\n`)
    const { code, out } = shaftwright(['plan', name], folder)
    expect(code).toBe(1)
    expect(out).toMatch(/^port dry-1: /m)
    expect(out).toMatch(/^spare: no plan\n {2}The drive has no reading\.$/m)
    const json = planSchema.parse(
      held('plan.schema.json', shaftwright(['plan', name, '--format', 'json'], folder).out),
    )
    expect(json.plans.at(-1)).toEqual({ drive: 'spare', reading: null, fault: 'The drive has no reading.' })
    expect(shaftwright(['plan', name, '--reading', 'dry-1'], folder).out).not.toContain('spare')
  })

  it('gives no steps while errors stand in what it depends on, and ends with 1', () => {
    const text = fs.readFileSync(found, 'utf8').replace(/^( *)gaps: .*$/m, '$&\n$&')
    const name = put('gaps-twice.wright', text)
    const { code, out } = shaftwright(['plan', name], folder)
    expect(code).toBe(1)
    expect(out).toMatch(/The plan depends on an error\. Fix it first: job\/duplicate at \d+:\d+/)
    expect(out).not.toContain('turn the lower nut counter')
    const json = planSchema.parse(
      held('plan.schema.json', shaftwright(['plan', name, '--format', 'json'], folder).out),
    )
    expect(json.plans).toMatchObject([
      { withheld: 'errors', errors: [{ check: 'job/duplicate' }], predicted: null },
    ])
  })

  it('says why a reading gives no plan', () => {
    const name = put(
      'few.wright',
      'drive d {\n coupling { flange-diameter: 100 mm }\n reading r { taken: 2026-01-01  gauge: 0.02 mm  gaps: top 1 mm, bottom 1 mm }\n}\n',
    )
    const { code, out } = shaftwright(['plan', name], folder)
    expect(code).toBe(1)
    expect(out).toMatch(/^d r: no plan\n.*three are needed/m)
    const reading = ' reading r { taken: 2026-01-01  gauge: 0.02 mm  gaps: top 1 mm, bottom 1 mm }\n'
    const twice = put('twice.wright', `drive d {\n${reading}${reading}}\n`)
    const ambiguous = shaftwright(['plan', twice, '--reading', 'r'], folder)
    expect(ambiguous.code).toBe(1)
    expect(ambiguous.out).toContain('2 readings called r')
    const open = put('open.wright', `drive d {\n coupling {\n${reading}}\n`)
    expect(shaftwright(['plan', open], folder).out).toContain('Errors in its text may hide one')
  })
})
