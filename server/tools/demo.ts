// npm run demo: what a user sees first. A job with faults is checked (so `check` ends with 1), and its moves are planned.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { dist, root } from './bundles.ts'

const job = 'docs/examples/survey-launch-as-found.wright'

const shaftwright = (command: string, expected: number): void => {
  console.log(`\n$ shaftwright ${command} ${job}\n`)
  const { status } = spawnSync(process.execPath, [join(dist, 'cli.js'), command, job], {
    cwd: root,
    stdio: 'inherit',
  })
  if (status !== expected) throw new Error(`shaftwright ${command} ended with ${status}, not ${expected}.`)
}

shaftwright('check', 1)
shaftwright('plan', 0)

console.log(`
Next: docs/language.md shows how to write a job file. Write your own, then run
  node dist/cli.js check YOUR.wright`)
