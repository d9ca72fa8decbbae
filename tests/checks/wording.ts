import type { Finding } from '../../server/src/checks/check.ts'
import { longestLine } from '../../server/src/checks/one-line.ts'

/** What a `todo` may begin with: it tells somebody to do something. */
const imperatives =
  /^(Add|Align|Always|Ask|Block|Check|Choose|Close|Connect|Correct|Cover|Delete|Enter|Fill|Find|Fix|Follow|Give|Indent|Isolate|Keep|Lay|Lift|List|Look|Loosen|Make|Measure|Merge|Move|Name|Open|Plug|Put|Raise|Read|Remove|Rename|Repair|Begin|Replace|Save|Secure|See|Set|Shim|Shorten|Slide|Slacken|Slip|State|Stop|Support|Tighten|Take|Turn|Try|Use|Wait|Write|Do not)\b/

/** Words that are no plain English here: old-fashioned, translated, or charming where the trade has a usual word. */
export const forbidden: readonly RegExp[] = [
  /\bnought\b/i,
  /\bput right\b/i,
  /\b(is|are) told\b/i,
  /\bmend(ed)?\b/i,
  /\bhas to be\b/i,
  /\bhas to\b/i,
  /\bis to be\b/i,
  /\bheld against\b/i,
  /\bstands? here\b/i,
  /\bslip of the pen\b/i,
  /\bmiswritten\b/i,
  /\bsqueezed?\b/i,
  /\bwanted\b/i,
  /\bsaid to\b/i,
  /\bwhatever\b/i,
  /\bgo by\b/i,
  /\b(bed|machine) has not\b/i,
  /\byet the\b/i,
  /\bput together\b/i,
  /\bthat is meant\b/i,
  /\bleads nowhere\b/i,
  /\ball is well\b/i,
]

/** A unit with no figure before it. */
const bareUnit = /(?<![\d.)½¼¾⅓⅔/-])[  ](?:mm2?|kW|kA|rpm|mohm|mrad|N·m|Ah|degC)\b/

/** Cautions are findings of their own: no other finding repeats them. */
export const caution =
  /\b(isolate|lock(ed)? off|prove[ns]? (it )?dead|licensed|kills?|stays? live|holds charge|watertight|floods?|hands (and fingers )?from under)\b/i

export const sentencesOf = (text: string): readonly string[] => text.split(/(?<=[.?!:;])\s+(?=\S)/)
export const wordsIn = (sentence: string): number =>
  sentence.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length
/** Two lines of a short sentence. */
export const mostWords = 25

/** What is not in shape in the words of a finding: nothing where all is. */
export function wordingFaults(finding: Finding): readonly string[] {
  const { check, message, detail, todo } = finding
  const written = check === 'job/concession-expired' || finding.accepted ? '' : (detail ?? '')
  const all = [message, written, todo].join(' ')
  return [
    ...(message.length > longestLine ? [`its line has ${message.length} characters`] : []),
    ...(/\n/.test([message, detail, todo].join('')) ? ['it breaks a line'] : []),
    ...(/[^.]\.$/.test(message) ? [] : ['its line does not end with a full stop']),
    ...(detail === undefined || /[.?!]$/.test(detail) || finding.accepted ? [] : ['its detail does not end']),
    ...(/[.?]$/.test(todo) ? [] : ['what to do does not end']),
    ...(imperatives.test(todo) || /^Did you mean /.test(todo)
      ? []
      : ['what to do does not begin with a verb']),
    ...forbidden.flatMap((phrase) => phrase.exec(all)?.[0] ?? []).map((words) => `it says "${words}"`),
    ...(bareUnit.test(all) && !check.startsWith('job/unit-') && check !== 'job/gauge-unknown'
      ? [`it has a unit without a figure: ${bareUnit.exec(all)?.[0]}`]
      : []),
    ...(!check.startsWith('caution/') && caution.test(all)
      ? [`it repeats a caution: ${caution.exec(all)?.[0]}`]
      : []),
    ...[message, written, todo]
      .flatMap(sentencesOf)
      .filter((sentence) => wordsIn(sentence) > mostWords)
      .map((sentence) => `a sentence has ${wordsIn(sentence)} words: ${sentence}`),
  ]
}
