import { trustedCorrection } from '../../server/src/areas/alignment/plan-trust.ts'
import { logUpTo } from '../../server/src/areas/alignment/plans/log.ts'
import { logJson } from '../../server/src/areas/alignment/plans/log-json.ts'
import { lastReading } from '../../server/src/areas/alignment/plans/moves.ts'
import { planJson } from '../../server/src/areas/alignment/plans/plan-json.ts'
import { planText } from '../../server/src/areas/alignment/plans/plan-text.ts'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { lookupFrom } from '../../server/src/store/store.ts'

/** All that is said of a job with one drive: the words of its findings and of the plan of its last reading, and the JSON of the plans. */
export function saidOf(text: string) {
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  const analysis = new Analysis()
  analysis.begin()
  const findings = new Checker(analysis, allChecks).check(file, { today: '2026-03-10' })
  const drive = analysis.blocks(file).find(({ kind }) => kind === 'drive')
  const reading = drive && lastReading(drive)
  if (!reading) throw new Error('no reading')
  const lookup = lookupFrom(reading, { analysis, file })
  const outcome = trustedCorrection(lookup.block, lookup, { file, findings })
  const log = logUpTo(lookup.block, lookup)
  const words = findings.flatMap(
    ({ message, detail = '', todo, found = '', limit = '', assumptions = [] }) => [
      message,
      detail,
      todo,
      found,
      limit,
      ...assumptions,
    ],
  )
  // A finding of an earlier reading speaks of its plan.
  const corrections = [...log.map((entry) => entry.outcome), outcome].flatMap((one) =>
    one.ok ? [one.value] : [],
  )
  const json = [corrections.map((c) => planJson(c, lookup.system)), logJson(log)]
  return {
    json,
    words: [...words, outcome.ok ? planText(outcome.value, log, lookup.system) : outcome.fault.words],
    stepped: outcome.ok && outcome.value.feet.some(({ step }) => step.by !== 'none'),
  }
}
