import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { type JobFile, linkFile } from '../../server/src/job/files.ts'
import type { Block } from '../../server/src/job/model.ts'

/** Files by path; the first is the one that is read. */
export function read(files: Readonly<Record<string, string>> | string) {
  const texts = typeof files === 'string' ? { 'a.wright': files } : files
  const [path = 'a.wright'] = Object.keys(texts)
  const open = (name: string) => (texts[name] === undefined ? undefined : openDocument(texts[name]))
  const file: JobFile = linkFile(path, openDocument(texts[path] ?? ''), open)
  const analysis = new Analysis()
  analysis.begin()
  const blocks = analysis.blocks(file)
  const bound = file.document.sections.map((section) => analysis.bound(file, section))
  return {
    file,
    blocks,
    problems: [...bound.flatMap(({ problems }) => problems), ...file.problems].map(({ problem, at }) => ({
      ...problem,
      written: at.section.text.slice(at.span.start, at.span.end),
    })),
  }
}

/** The value of `main.seal.free-length`: blocks by name or kind, then the fact. */
export function factValue(blocks: readonly Block[], path: string): unknown {
  const names = path.split('.')
  const fact = names.pop() ?? ''
  let among = blocks
  let block: Block | undefined
  for (const name of names) {
    block = among.find((b) => b.name === name || b.kind === name)
    among = block?.children ?? []
  }
  return block?.facts.get(fact)?.value
}
