import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { codeLenses } from '../../server/src/editor/hints/code-lens.ts'
import { inlayHints } from '../../server/src/editor/hints/inlay-hints.ts'
import { computedMarkdown } from '../../server/src/editor/hover/computed.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { type Document, openDocument, rangeOf } from '../../server/src/job/document.ts'
import { type JobFile, linkFile } from '../../server/src/job/files.ts'
import type { Block, Place } from '../../server/src/job/model.ts'
import { referencesOf } from '../../server/src/job/references.ts'
import { storeOf } from '../../server/src/store/store.ts'

const examples = resolve(import.meta.dirname, '../../docs/examples')
export const demo = (path: string): string => readFileSync(resolve(examples, path), 'utf8')

export const withInside = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) => [block, ...withInside(block.children)])

/** One analysis over all states of a job and of the library that it uses, as an editor has it. */
export class Session {
  readonly analysis = new Analysis()
  readonly #checker = new Checker(this.analysis, allChecks)

  file(text: Document | string, library: Document | string = ''): JobFile {
    const [own, parts] = [text, library].map((one) => (typeof one === 'string' ? openDocument(one) : one))
    this.analysis.begin()
    return linkFile('twin.wright', own as Document, (path) =>
      path === 'parts/drivetrain.wright' ? parts : undefined,
    )
  }

  findings(file: JobFile) {
    return this.#checker.check(file, {
      today: '2026-03-10',
      onFault: (check, error) => {
        throw new Error(`${check} failed`, { cause: error })
      },
    })
  }

  /** All that a person sees of it. */
  seen(text: Document | string, library: Document | string = '') {
    const file = this.file(text, library)
    const { document } = file
    const view = { analysis: this.analysis, file }
    const where = (place: Place) =>
      document.sections.includes(place.section)
        ? rangeOf(document, place)
        : { text: place.section.text, span: place.span }
    const findings = this.findings(file).map(({ at, related, ...rest }) => ({
      ...rest,
      at: rangeOf(document, at),
      related: related?.map(({ at: place, message }) => ({ message, at: where(place) })),
    }))
    return {
      findings,
      lenses: document.sections.map((section) => codeLenses(view, section)),
      hints: document.sections.map((section) => inlayHints(view, section)),
      references: document.sections.map((section) =>
        referencesOf(view, section).map(({ at, named, fact, word }) => ({
          at: where(at),
          named: where(named),
          fact,
          word,
        })),
      ),
      computed: withInside(this.analysis.blocks(file)).map((block) => computedMarkdown(block, view)),
    }
  }

  /** How many sections are bound to find what there is to find. */
  bound(file: JobFile): number {
    const before = this.analysis.timesBound
    this.findings(file)
    return this.analysis.timesBound - before
  }

  /** What work is done to find what there is to find. */
  worked(file: JobFile): readonly string[] {
    const done: string[] = []
    const store = storeOf(this.analysis, file)
    store.onWork = (title) => done.push(title)
    this.findings(file)
    store.onWork = () => undefined
    return done
  }
}
