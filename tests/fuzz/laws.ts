// What holds of every text, whatever is in it: from the letters to the findings.
import fc from 'fast-check'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { documentFrom, edit, openDocument, rangeOf, textOf } from '../../server/src/job/document.ts'
import { textFrom } from '../../server/src/job/file-text.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { parseSection } from '../../server/src/syntax/parser.ts'
import { print } from '../../server/src/syntax/tree.ts'
import { findingsOf, placed } from '../checks/marks.ts'
import { jobs, nearly, texts } from '../syntax/texts.ts'
import { anyEdit, applied } from './edits.ts'
import { randomFrom } from './random.ts'

const all = fc.oneof(texts, nearly, jobs)

/** Each law by name; it throws where the law is broken. */
export const laws: Readonly<Record<string, fc.IRawProperty<unknown>>> = {
  'a tree prints as the text it was read from': fc.property(all, (text) => {
    equal(print(parseSection(text).tree), text)
  }),
  'bytes are read as the text that they are, or not at all': fc.property(
    fc.oneof(
      fc.uint8Array({ max: 255, maxLength: 40 }),
      all.map((text) => new TextEncoder().encode(text)),
    ),
    (bytes) => {
      const read = textFrom(bytes)
      const again = typeof read === 'string' ? new TextEncoder().encode(read) : bytes
      equal(Buffer.from(again).toString('hex'), Buffer.from(bytes).toString('hex'))
      const found = documentFrom(read)
      if (typeof read !== 'string' && found.refusal !== read)
        throw new Error('what is not read has no refusal')
      if (typeof read === 'string') equal(textOf(found), read.replace(/^\uFEFF/, ''))
    },
  ),
  'laying out twice is laying out once': fc.property(all, (text) => {
    const once = formatText(text)
    equal(formatText(once), once)
  }),
  'no check fails, and every finding stands inside the text': fc.property(all, (text) => {
    const outcome = findingsOf(text, allChecks)
    const lines = text.split(/\r\n|\n|\r/)
    for (const { check, line, from, endLine, to } of placed(outcome)) {
      const inside = from <= (lines[line]?.length ?? -1) && to <= (lines[endLine]?.length ?? -1)
      if (!inside) throw new Error(`${check} stands outside the text: ${line}:${from} to ${endLine}:${to}`)
    }
  }),
  'after any edits the same is found as in the text read afresh': fc.property(
    all,
    fc.nat(),
    fc.integer({ min: 1, max: 12 }),
    (start, seed, count) => {
      const random = randomFrom(seed)
      const analysis = new Analysis()
      const checker = new Checker(analysis, allChecks)
      let text = start
      let document = openDocument(text)
      for (let i = 0; i < count; i++) {
        const next = anyEdit({ text, size: 300, random })
        text = applied(text, next)
        document = edit(document, next.from, next.to, next.text)
        equal(textOf(document), text)
        analysis.begin()
        const file = linkFile('a.wright', document, () => undefined)
        const found = checker.check(file, { today: '2026-03-10' })
        const now = found.map(({ at, check, message }) => ({ check, message, ...rangeOf(document, at) }))
        const fresh = findingsOf(text, allChecks)
        const afresh = fresh.findings.map(({ at, check, message }) => ({
          check,
          message,
          ...rangeOf(fresh.document, at),
        }))
        equal(JSON.stringify(now), JSON.stringify(afresh))
      }
    },
  ),
}

function equal(found: string, expected: string): void {
  if (found !== expected) throw new Error(`found\n${found}\nwhere it should be\n${expected}`)
}
