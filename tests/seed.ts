// Random inputs are the same in each run, so that a change is judged by what it changes. SEED=N, or SEED=random, tries others.
import fc from 'fast-check'

const seed = process.env['SEED'] ?? '1'
if (seed !== 'random') fc.configureGlobal({ seed: Number(seed) })
