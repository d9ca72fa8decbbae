// `npm run simulate:alignment [CASES]`: how often the plan's moves bring a machine within its limits, and how often a reading says so wrongly; then how
// often a mistake between two readings is named. Prints the tables of docs/engineering/alignment.md.
import { tally } from './simulated-machine.ts'
import { cleanLogs, mistakeNames, namedOf } from './simulated-mistakes.ts'

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

const each = Math.max(1, Math.round(cases / 10))
console.log(`\n${each} logs a slip whose effect is beyond 3 U.\n`)
console.log(
  '| slip | named alone | among at most three | among more | nothing named | named wrongly | steps given | steps wrongly given | effect of 1.5 to 3 U | among at most three | named wrongly | steps wrongly given |',
)
console.log('| :-- | --: | --: | --: | --: | --: | --: | --: | --: | --: | --: | --: |')
for (const name of mistakeNames) {
  const { beyond, near } = namedOf(name, each, each / 5)
  const of = (part: number) => percent(part, beyond.drawn)
  console.log(
    `| ${name} | ${of(beyond.alone)} | ${of(beyond.few)} | ${of(beyond.many)} | ${of(beyond.unnamed)} | ${of(beyond.wrongly)} | ${of(beyond.steps)} | ${beyond.stepsWrongly} | ${near.drawn} | ${percent(near.few, near.drawn)} | ${percent(near.wrongly, near.drawn)} | ${near.stepsWrongly} |`,
  )
}
const { alarms, named } = cleanLogs(2 * cases)
const perThousand = (part: number) => ((1000 * part) / (2 * cases)).toFixed(2)
console.log(
  `\n${2 * cases} logs without a slip: ${perThousand(alarms)} in a thousand beyond noise, ${perThousand(named)} in a thousand with a slip named.`,
)
