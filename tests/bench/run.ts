// npm run bench: drives the built server as an editor does, and says how long it takes beside how long it may. --json gives the figures.
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { bundle } from '../../server/tools/bundles.ts'
import { type Editing, measureEditing } from './editing.ts'
import { goals, type Measured, report } from './goals.ts'
import { measureArchive, measureCold } from './starting.ts'

const { values } = parseArgs({ options: { json: { type: 'boolean', default: false } } })
const folder = mkdtempSync(join(tmpdir(), 'shaftwright-bench-'))

/** Resident memory of a process, where the system tells: bytes. */
function memoryOf(pid: number | undefined): number | undefined {
  try {
    const [, kib] = /VmRSS:\s*(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8')) ?? []
    return kib === undefined ? undefined : Number(kib) * 1024
  } catch {
    return undefined
  }
}

try {
  // A copy, so that building again meanwhile changes nothing.
  await bundle('package', folder)
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
  const server = [join(folder, 'server.mjs')]
  const floor = [join(import.meta.dirname, 'floor-server.ts')]

  const load = loadavg()[0] ?? 0
  const editing: Editing[] = []
  for (const drives of [1, 10, 100]) editing.push(await measureEditing(drives, { server, floor }, memoryOf))
  const measured: Measured = {
    editing,
    cold: await measureCold(server, 100),
    archive: await measureArchive(join(folder, 'cli.js'), folder),
    bundle: statSync(join(folder, 'server.mjs')).size,
  }
  if (values.json) console.log(JSON.stringify({ measured, goals: goals(measured) }, null, 2))
  else {
    console.log(report(measured))
    console.log(`\n${cpus().length} cores, Node ${process.versions.node}, load ${load.toFixed(1)} before.`)
  }
} finally {
  rmSync(folder, { recursive: true, force: true })
}
