// What `format` does to a user's file when it cannot write it, is killed, or is not alone.
import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as after } from 'node:timers/promises'
import { afterEach, describe, expect, it } from 'vitest'
import { formatText } from '../../server/src/syntax/format.ts'
import { folder, put, root, shaftwright } from './run-cli.ts'

const at = (name: string): string => path.join(folder, name)
const read = (name: string): string => fs.readFileSync(at(name), 'utf8')
const temporaries = (inside: string): readonly string[] =>
  fs.readdirSync(at(inside)).filter((name) => name.startsWith('.'))

/** Not laid out, and long enough to be cut in the middle. */
const wild = (seals: number, name = 's'): string =>
  Array.from({ length: seals }, (_, i) => `seal ${name}${i} {\nfree-length: 148 mm }\n`).join('')

const main = path.join(root, 'server/src/cli/main.ts')
const isRoot = process.getuid?.() === 0

/** A shell that runs a command where no file may get longer than some kilobytes. */
const limited = ['sh', '-c', `trap '' XFSZ; ulimit -f 8; exec "$@"`, 'sh']
/** One that runs it on a full disk of its own, mounted over the folder. */
const fullDisk = [
  ...['unshare', isRoot ? '-m' : '-rm', 'sh', '-c'],
  `cp a.wright ../before && mount -t tmpfs -o size=64k tmpfs "$PWD" && cd "$PWD" && cp ../before a.wright || exit 99
   dd if=/dev/zero of=rest bs=1k 2>/dev/null
   "$@"; code=$?
   cat a.wright > ../after; ls -A > ../names; exit $code`,
  'sh',
]

function formatUnder([shell = '', ...words]: readonly string[], inside: string) {
  return spawnSync(shell, [...words, process.execPath, main, 'format', 'a.wright'], {
    cwd: at(inside),
    encoding: 'utf8',
  })
}

describe('a file that cannot be written stays whole', () => {
  it('where files may not get as long', () => {
    put('short/a.wright', wild(1000))
    const { status, stderr } = formatUnder(limited, 'short')
    expect(stderr).toBe('a.wright cannot be written: the size limit for files is reached.\n')
    expect(status).toBe(2)
    expect(read('short/a.wright')).toBe(wild(1000))
    expect(temporaries('short')).toEqual([])
  })

  it('on a full disk', () => {
    put('full/disk/a.wright', wild(1000))
    const { status, stderr } = formatUnder(fullDisk, 'full/disk')
    const couldMount = fs.existsSync(at('full/after'))
    // Not every system lets us mount a disk; then the limit of file size has to do.
    const said = couldMount ? { status, stderr } : formatUnder(limited, 'full/disk')
    expect(said.stderr).toMatch(/^a\.wright cannot be written: the (disk is full|size limit .*)\.\n$/)
    expect(said.status).toBe(2)
    expect(read(couldMount ? 'full/after' : 'full/disk/a.wright')).toBe(wild(1000))
    if (couldMount) expect(read('full/names')).toBe('a.wright\nrest\n')
    expect(temporaries('full/disk')).toEqual([])
  })

  it.each([
    ['a read-only file', 'protected/file/a.wright', 'it is read-only'],
    ['a file in a read-only folder', 'protected/folder', 'its folder is read-only'],
  ])('%s, also as root', (_, protectedPath, why) => {
    const name = put(`${protectedPath.replace('/a.wright', '')}/a.wright`, wild(1))
    const mode = fs.statSync(at(protectedPath)).mode & 0o777
    fs.chmodSync(at(protectedPath), mode & 0o555)
    const { code, err } = shaftwright(['format', name], folder)
    fs.chmodSync(at(protectedPath), mode)
    expect({ code, err }).toEqual({ code: 2, err: `${name} cannot be written: ${why}.\n` })
    expect(read(name)).toBe(wild(1))
    expect(temporaries(path.dirname(name))).toEqual([])
  })

  it('where it has another name too, which would keep the old text', () => {
    put('names/a.wright', wild(1))
    fs.linkSync(at('names/a.wright'), at('names/kept.txt'))
    const { code, err } = shaftwright(['format', 'names'], folder)
    expect(code).toBe(2)
    expect(err).toMatch(/^names\/a\.wright cannot be written: it has 2 names \(hard links\)/)
    expect(read('names/a.wright')).toBe(wild(1))
    expect(fs.statSync(at('names/a.wright')).ino).toBe(fs.statSync(at('names/kept.txt')).ino)
  })

  it('while the others are formatted', () => {
    put('some/a.wright', wild(1))
    put('some/b.wright', wild(1))
    put('some/c.wright', wild(1))
    fs.chmodSync(at('some/b.wright'), 0o444)
    const { code, out, err } = shaftwright(['format', 'some'], folder)
    expect({ code, out }).toEqual({ code: 2, out: 'some/a.wright\nsome/c.wright\n' })
    expect(err).toBe('some/b.wright cannot be written: it is read-only.\n')
  })
})

describe('a file that is written', () => {
  it('keeps its mode and, where that is allowed, its owner', () => {
    put('rights/a.wright', wild(1))
    fs.chmodSync(at('rights/a.wright'), 0o640)
    if (isRoot) fs.chownSync(at('rights/a.wright'), 1234, 5678)
    const { uid, gid } = fs.statSync(at('rights/a.wright'))
    expect(shaftwright(['format', 'rights'], folder).code).toBe(0)
    const now = fs.statSync(at('rights/a.wright'))
    expect({ mode: now.mode & 0o7777, uid: now.uid, gid: now.gid }).toEqual({ mode: 0o640, uid, gid })
    expect(read('rights/a.wright')).toBe(formatText(wild(1)))
  })

  it('is the one that a symbolic link leads to; the link stays', () => {
    put('linked/real/a.wright', wild(1))
    fs.symlinkSync('real/a.wright', at('linked/b.wright'))
    expect(shaftwright(['format', 'b.wright'], at('linked')).code).toBe(0)
    expect(fs.readlinkSync(at('linked/b.wright'))).toBe('real/a.wright')
    expect(read('linked/real/a.wright')).toBe(formatText(wild(1)))
    expect(temporaries('linked')).toEqual([])
  })
})

const replacing = `import { replaceText } from ${JSON.stringify(path.join(root, 'server/src/cli/write-file.ts'))}\n`
/** How long the eight format. */
const seconds = 10
const formatting = `import fs from 'node:fs'
import { format } from ${JSON.stringify(path.join(root, 'server/src/cli/format.ts'))}\n`

const started: ChildProcess[] = []
afterEach(() => {
  for (const child of started.splice(0)) child.kill('SIGKILL')
})

/** Code in a process of its own, and what it says of errors. */
function start(code: string, ...args: readonly string[]) {
  const child = spawn(process.execPath, ['--input-type=module', '-e', code, ...args], { cwd: folder })
  started.push(child)
  let said = ''
  child.stderr.on('data', (words) => {
    said += String(words)
  })
  return { child, ended: once(child, 'close').then(() => said) }
}

describe('a process that is killed', () => {
  it('leaves one of both texts whole', { timeout: 120_000 }, async () => {
    const length = 1_000_000
    const name = put('killed/a.wright', '0'.repeat(length))
    const inTurns = `${replacing}
      const [file, first] = process.argv.slice(1)
      const text = (turn) => String(turn % 10).repeat(${length})
      for (let turn = Number(first); ; turn++) {
        process.stdout.write('.')
        replaceText(file, text(turn), text(turn + 1))
      }`
    const found = new Set<string>()
    for (let kill = 0; kill < 20; kill++) {
      const { child, ended } = start(inTurns, name, read(name).slice(0, 1))
      await once(child.stdout, 'data')
      await after(Math.random() * 150)
      child.kill('SIGKILL')
      expect(await ended).toBe('')
      const text = read(name)
      expect(text === text.slice(0, 1).repeat(length), `after kill ${kill}`).toBe(true)
      found.add(text.slice(0, 1))
    }
    expect(found.size).toBeGreaterThan(1)
    // What a killed process leaves behind is hidden, and no job.
    for (const left of temporaries('killed')) expect(left).toMatch(/^\.shaftwright-[0-9a-f]{16}\.tmp$/)
    expect(shaftwright(['check', 'killed', '--format', 'json'], folder).out).toContain(
      '"killed/a.wright"\n  ]',
    )
  })
})

describe('two at once', () => {
  it('end with one of both texts, and the other is told', async () => {
    put('twice/a.wright', 'one')
    const replace = (text: string) =>
      start(`${replacing} replaceText(process.argv[1], 'one', '${text.repeat(9)}')`, 'twice/a.wright').ended
    const said = await Promise.all(['two', 'three'].map(replace))
    expect(['two', 'three'].map((text) => text.repeat(9))).toContain(read('twice/a.wright'))
    for (const words of said)
      if (words !== '') expect(words).toContain('a.wright cannot be written: another program changed it.')
  })

  it('never overwrite what another program wrote meanwhile', () => {
    put('meanwhile/a.wright', wild(1, 'edited'))
    const { stderr } = spawnSync(
      process.execPath,
      ['--input-type=module', '-e', `${replacing} replaceText('meanwhile/a.wright', 'as it was', 'new')`],
      { cwd: folder, encoding: 'utf8' },
    )
    expect(stderr).toContain('another program changed it. Run the command again.')
    expect(read('meanwhile/a.wright')).toBe(wild(1, 'edited'))
    expect(temporaries('meanwhile')).toEqual([])
  })

  it('are eight that format one file which another program keeps writing', { timeout: 120_000 }, async () => {
    const versions = Array.from({ length: 10 }, (_, i) => wild(100, `v${i}-`))
    const laidOut = new Set(versions.map(formatText))
    const whole = new Set([...versions, ...laidOut])
    const name = put('eight/a.wright', versions[0] ?? '')
    const untilStopped = `${formatting} while (!fs.existsSync('eight/stop')) format([process.argv[1]], {})`
    const formatters = Array.from({ length: 8 }, () => start(untilStopped, name))
    const since = Date.now()
    let formatted = 0
    for (let i = 0; Date.now() - since < seconds * 1000 || formatted < 20; i = (i + 1) % 10) {
      await after(5)
      const text = read(name)
      expect(whole.has(text)).toBe(true)
      expect(formatters.map(({ child }) => child.exitCode)).toEqual(formatters.map(() => null))
      if (!laidOut.has(text)) continue
      formatted += 1
      fs.writeFileSync(at('eight/other.tmp'), versions[i] ?? '')
      fs.renameSync(at('eight/other.tmp'), at(name))
    }
    put('eight/stop', '')
    const said = (await Promise.all(formatters.map(({ ended }) => ended)))
      .flatMap((words) => words.split('\n'))
      .filter(Boolean)
    expect([...new Set(said)].join('\n')).toMatch(
      /^(eight\/a\.wright cannot be written: another program changed it\. Run the command again\.)?$/,
    )
    expect(whole.has(read(name))).toBe(true)
    expect(temporaries('eight')).toEqual([])
  })
})

describe('the source', () => {
  it('writes files in one place only', () => {
    const writing =
      /\b(writeFile|appendFile|rename|copyFile|cp|truncate|rm|unlink|write)Sync\(|openSync\((?![^)]*O_RDONLY)|fs\.writeFile\(|fs\.rename\(|fs\.promises|createWriteStream\(/
    const sources = ['server/src', 'client/src'].flatMap((part) =>
      fs
        .readdirSync(path.join(root, part), { recursive: true, encoding: 'utf8' })
        .filter((file) => file.endsWith('.ts'))
        .map((file) => path.join(part, file)),
    )
    expect(sources.length).toBeGreaterThan(100)
    expect(sources.filter((file) => writing.test(fs.readFileSync(path.join(root, file), 'utf8')))).toEqual([
      'server/src/cli/write-file.ts',
    ])
  })
})
