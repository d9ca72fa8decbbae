// What is measured in fresh processes: starting, the first findings, and checking a whole archive.
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdirSync, openSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { jobOf } from './jobs.ts'
import { type Spread, sampled, timed } from './samples.ts'
import { type Session, startSession } from './session.ts'

export interface Cold {
  readonly initialized: Spread
  readonly firstFindings: Spread
}

/** From the start of the process to `initialized`, and from opening a long job in a fresh server to its findings. */
export async function measureCold(server: readonly string[], drives: number): Promise<Cold> {
  const text = jobOf(drives)
  const runs = { times: 10, warmUp: 1 }
  const initialized = await sampled(runs, async () => {
    let session: Session | undefined
    const took = await timed(async () => {
      session = await startSession(server)
    })
    await session?.close()
    return took
  })
  const firstFindings = await sampled(runs, async () => {
    const session = await startSession(server)
    const took = await timed(() => session.open(text))
    await session.close()
    return took
  })
  return { initialized, firstFindings }
}

export interface Archive {
  readonly jobs: number
  readonly lines: number
  /** Milliseconds for one job, and for all of them. */
  readonly one: number
  readonly all: number
  readonly linesPerSecond: number
  /** Most memory the process held, in bytes. */
  readonly memory: number
}

/** `check` over a folder of jobs. The time for one job alone is taken off, so that starting does not count. */
export async function measureArchive(cli: string, folder: string): Promise<Archive> {
  const jobs = 1000
  const text = jobOf(3)
  const perJob = text.split('\n').length - 1
  const fill = (name: string, count: number): string => {
    const filled = join(folder, name)
    mkdirSync(filled)
    for (let i = 0; i < count; i++)
      writeFileSync(join(filled, `job-${String(i).padStart(4, '0')}.wright`), text)
    return filled
  }
  const single = await check(cli, fill('one', 1))
  const whole = await check(cli, fill('all', jobs))
  return {
    jobs,
    lines: jobs * perJob,
    one: single.took,
    all: whole.took,
    linesPerSecond: ((jobs - 1) * perJob) / ((whole.took - single.took) / 1000),
    memory: whole.memory,
  }
}

/** Tells the most memory the process held, when it ends. */
const witness = `data:text/javascript,${encodeURIComponent(
  "import { writeFileSync } from 'node:fs'; process.on('exit', () => writeFileSync(process.env.BENCH_MEMORY, String(process.resourceUsage().maxRSS * 1024)))",
)}`

async function check(cli: string, folder: string): Promise<{ took: number; memory: number }> {
  const memory = `${folder}.memory`
  const output = openSync(`${folder}.output`, 'w')
  const took = await timed(async () => {
    const child = spawn(process.execPath, ['--import', witness, cli, 'check', folder], {
      stdio: ['ignore', output, 'inherit'],
      env: { ...process.env, BENCH_MEMORY: memory },
    })
    const [code] = await once(child, 'exit')
    if (code !== 1) throw new Error(`check ended with ${code}; the jobs have faults, so 1 was expected`)
  })
  return { took, memory: Number(readFileSync(memory, 'utf8')) }
}
