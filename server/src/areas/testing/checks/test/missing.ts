import { atHead, check, commonPractice } from '../../../../checks/check.ts'
import { isLikeUnknown, namesInLine } from '../../../../checks/missing.ts'
import { testsMissing } from '../../plans/tests-missing.ts'

const job = (tests: string) => `job "Launch" {
  vessel: "Launch 07"
  status: as-built
}
drive main {
  motor propulsion { terminals: U, V, W }
${tests}}`

export default check({
  id: 'test/missing',
  severity: 'error',
  followsStatus: true,
  claim: {
    from: 'as-built',
    words:
      'Each motor has a test of its insulation, its phases and its direction, each sensor of a motor one of its reading, and each controller with a capacitance one of its precharge.',
  },
  title: 'As-built without the tests of a finished drive',
  why: 'An as-built job claims that the drive was proved before it went to sea. What has no record was not proved.',
  source: commonPractice('tests at commissioning: common practice, no source'),
  on: 'drive',
  fires: job('').replace('drive main {', 'drive main {\n#<- insulation-resistance of propulsion'),
  quiet: job(`  test t1 {
    kind: insulation-resistance
    on: propulsion
    taken: 2026-03-01
    voltage: 500 V
    resistance: 180 Mohm
    temperature: 18 degC
  }
  test t2 {
    kind: phase-resistance
    on: propulsion
    taken: 2026-03-01
    resistances: U-V 14.2 mohm, V-W 14.3 mohm, W-U 14.1 mohm
    temperature: 18 degC
  }
  test t3 {
    kind: rotation
    on: propulsion
    taken: 2026-03-02
    turns: clockwise
    coupled: no
  }
`),
  run: (_facts, lookup) => {
    const { block, status } = lookup
    const missing = status === 'as-built' && !isLikeUnknown(block) ? testsMissing(block, lookup) : []
    if (missing.length === 0) return []
    const names = missing.map(({ kind, on }) => `${kind} of ${on}`)
    const count = missing.length === 1 ? 'One test has' : `${missing.length} tests have`
    return [
      atHead(block, {
        message: namesInLine(`${count} no record: `, names),
        todo: 'Add their records, or set the status back to issued until they are done.',
        limit: names.join(', '),
      }),
    ]
  },
})
