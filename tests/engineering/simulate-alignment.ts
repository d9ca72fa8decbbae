// `npm run simulate:alignment [CASES]`: how often the plan's moves bring a machine within its limits, and how often a reading says so wrongly. Prints
// the table of docs/engineering/alignment.md.
import { tally } from './simulated-machine.ts'

const cases = Number(process.argv[2] ?? 10_000)
if (!(Number.isInteger(cases) && cases > 0 && cases <= 1e6))
  throw new RangeError(`cases: a whole number up to a million, got ${process.argv[2]}`)

const percent = (part: number, of: number) => (of === 0 ? '–' : `${((100 * part) / of).toFixed(2)} %`)
console.log(`${cases} machines a row, drawn anew from the same start.\n`)
console.log(
  '| gauge step, of the gap variation allowed | reached with margin | of these within by one move | by two | reached without margin | of these by two | not in these steps | "within" said | of these wrong |',
)
console.log('| --: | --: | --: | --: | --: | --: | --: | --: | --: |')
for (const share of [0.05, 0.1, 0.2, 0.3, 0.5]) {
  const { withMargin, withoutMargin, impossible, saidWithin, wrong } = tally(cases, share)
  console.log(
    `| ${share} | ${withMargin.count} | ${percent(withMargin.byOne, withMargin.count)} | ${percent(withMargin.byTwo, withMargin.count)} | ${withoutMargin.count} | ${percent(withoutMargin.byTwo, withoutMargin.count)} | ${impossible} | ${saidWithin} | ${percent(wrong, saidWithin)} |`,
  )
}
