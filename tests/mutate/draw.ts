// Which mutants a run tries. `checker` is asked by Stryker before it tries one; the tally asks `isDrawn` of those in the report.
import { createHash } from 'node:crypto'

export interface Mutant {
  readonly id: string
  readonly mutatorName: string
  readonly replacement?: string
  readonly location: { readonly start: { readonly line: number; readonly column: number } }
}

export interface Draw {
  readonly share: number
  readonly seed: number
}

/** The draw of this run, as `run.ts` hands it to Stryker and its processes. */
export const drawOfRun = (): Draw => {
  const [share = 1, seed = 1] = (process.env['MUTATE_DRAW'] ?? '1,1').split(',').map(Number)
  return { share, seed }
}

/** Each mutant is drawn by itself, so that a change of the code leaves the others drawn as they were. Lines and columns count from 1. */
export const isDrawn = ({ share, seed }: Draw, path: string, mutant: Mutant): boolean => {
  const { line, column } = mutant.location.start
  const name = `${seed} ${path} ${line} ${column} ${mutant.mutatorName} ${mutant.replacement ?? ''}`
  return createHash('sha1').update(name).digest().readUInt32BE() < share * 2 ** 32
}

class Checker {
  readonly #draw = drawOfRun()

  init() {}

  check(mutants: readonly (Mutant & { readonly fileName: string })[]) {
    const answers = mutants.map((mutant) => {
      const { line, column } = mutant.location.start
      const location = { start: { line: line + 1, column: column + 1 } }
      const path = mutant.fileName.replaceAll('\\', '/').replace(/^.*\/(?=server\/src\/)/, '')
      const drawn = isDrawn(this.#draw, path, { ...mutant, location })
      // Stryker has no word for a mutant that is passed over; this one keeps it out of every figure.
      const status = drawn ? 'passed' : 'compileError'
      return [mutant.id, { status, reason: drawn ? '' : 'not drawn' }]
    })
    return Object.fromEntries(answers)
  }
}

export const strykerPlugins = [{ kind: 'Checker', name: 'draw', injectableClass: Checker }]
