// The code that finds files, on a disk that takes capitals for small letters, with the paths of Windows: both simulated.
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'

type Folder = { readonly [name: string]: Folder | string | { readonly link: string } }
type Entry = Folder[string]

/** By drive. A name with a space at its end, or a dot, is the name without it (Win32, Naming Files). */
const disks: Folder = {
  'C:': {
    'secret.wright': 'seal secret { }\n',
    Jobs: {
      'boat.wright': 'use "Parts/bolts.wright"\n',
      'capitals.wright': 'use "parts/Bolts.wright"\nuse "BOAT.wright"\n',
      'dot.wright': 'use "boat.wright."\nuse "Parts /bolts.wright"\n',
      'back.wright': 'use "Parts\\\\bolts.wright"\nuse ".\\\\Parts\\\\..\\\\boat.wright"\n',
      'out.wright': [
        '../secret.wright',
        '..\\secret.wright',
        'Parts\\..\\..\\secret.wright',
        'C:\\secret.wright',
        'c:secret.wright',
        '\\secret.wright',
        '/secret.wright',
        '\\\\server\\share\\secret.wright',
        '//server/share/secret.wright',
        '\\\\?\\C:\\secret.wright',
      ]
        .map((target) => `use ${JSON.stringify(target)}\n`)
        .join(''),
      'linked.wright': 'use "Away/far.wright"\nuse "Near/bolts.wright"\n',
      'accent.wright': 'use "caf\u00E9.wright"\n',
      'cafe\u0301.wright': 'seal c { }\n',
      Parts: { 'bolts.wright': 'seal b { }\n' },
      Away: { link: 'D:\\Away' },
      Near: { link: 'C:\\Jobs\\Parts' },
      node_modules: { 'x.wright': '' },
    },
  },
  'D:': { Away: { 'far.wright': 'use "near.wright"\n', 'near.wright': 'seal n { }\n' } },
}

const { fakeFs } = vi.hoisted(() => {
  const isFolder = (entry: unknown): boolean =>
    typeof entry === 'object' && entry !== null && !('link' in entry)
  const folded = (name: string): string =>
    name
      .replace(/[. ]+$/, '')
      .normalize('NFC')
      .toLowerCase()
  const fail = (code: string, at: string): never => {
    throw Object.assign(new Error(`${code}: ${at}`), { code, path: at })
  }
  const fakeFs = (disk: () => Folder) => {
    /** What is there, and its real path. */
    const look = (at: string): { readonly entry: Entry; readonly real: string } => {
      let entry: Entry = disk()
      let real = ''
      for (const name of (/^[A-Z]:/.test(at) ? at : `C:\\Jobs\\${at}`)
        .split(/[\\/]/)
        .filter((part) => part !== '' && part !== '.')) {
        if (typeof entry === 'string' || 'link' in entry) return fail('ENOTDIR', at)
        const found: string =
          Object.keys(entry).find((one) => folded(one) === folded(name)) ?? fail('ENOENT', at)
        entry = (entry as Folder)[found] as Entry
        real = real === '' ? found : `${real}\\${found}`
        if (typeof entry === 'object' && 'link' in entry) ({ entry, real } = look(String(entry['link'])))
      }
      return { entry, real: /^[A-Z]:$/.test(real) ? `${real}\\` : real }
    }
    const stats = (entry: Entry) => ({
      isFile: () => typeof entry === 'string',
      isDirectory: () => isFolder(entry),
      size: Buffer.byteLength(typeof entry === 'string' ? entry : ''),
    })
    const statSync = (at: string, { throwIfNoEntry = true } = {}) => {
      try {
        return stats(look(at).entry)
      } catch (error) {
        if (throwIfNoEntry) throw error
        return undefined
      }
    }
    const readdirSync = (at: string, options?: { readonly withFileTypes: true }) => {
      const { entry } = look(at)
      if (!isFolder(entry)) return fail('ENOTDIR', at)
      return Object.entries(entry as Folder).map(([name, one]) =>
        options ? { name, isFile: () => typeof one === 'string', isDirectory: () => isFolder(one) } : name,
      )
    }
    const open: { readonly text: Buffer; at: number }[] = []
    // The one that is no system call leaves the names as they were given.
    const realpathSync = Object.assign(
      (at: string) => (look(at).real.toLowerCase() === at.toLowerCase() ? at : look(at).real),
      {
        native: (at: string) => look(at).real,
      },
    )
    return {
      constants: { O_RDONLY: 0 },
      realpathSync,
      statSync,
      readdirSync,
      openSync: (at: string) => open.push({ text: Buffer.from(String(look(at).entry)), at: 0 }) - 1,
      fstatSync: (handle: number) => stats(String(open[handle]?.text)),
      readSync: (handle: number, into: Buffer, from: number, length: number) => {
        const file = open[handle] ?? fail('EBADF', '')
        const read = file.text.copy(into, from, file.at, file.at + length)
        file.at += read
        return read
      },
      closeSync: () => {},
    }
  }
  return { fakeFs }
})

vi.mock('node:path', async (original) => {
  const { win32 } = await original<typeof import('node:path')>()
  return { ...win32, default: win32 }
})
vi.mock('node:fs', () => {
  const fs = fakeFs(() => disks)
  return { ...fs, default: fs }
})
vi.mock('node:fs/promises', () => {
  const fs = fakeFs(() => disks)
  return { readdir: async (at: string) => fs.readdirSync(at, { withFileTypes: true }) }
})

const { allChecks } = await import('../../server/src/areas/index.ts')
const { findingsOf } = await import('../checks/marks.ts')
const { jobFiles, openJob } = await import('../../server/src/cli/run.ts')
const { listInside } = await import('../../server/src/host/machine-node.ts')

const cwd = vi.spyOn(process, 'cwd')
beforeAll(() => void cwd.mockReturnValue('C:\\Jobs'))
afterAll(() => cwd.mockRestore())

const used = (name: string) => openJob({ path: name }).file.used.map((file) => file.path)
const problems = (name: string) => openJob({ path: name }).file.problems.map(({ problem }) => problem)

describe('on a disk of Windows', () => {
  it('a path may lean either way', () => {
    expect(path.sep).toBe('\\')
    expect(used('boat.wright')).toEqual(['Parts/bolts.wright'])
    expect(used('back.wright')).toEqual(['Parts/bolts.wright', 'boat.wright'])
    expect(problems('back.wright')).toEqual([])
  })

  it('a backslash that is lost in quotes is explained', () => {
    const { findings } = findingsOf('use "Parts\\bolts.wright"\n', allChecks)
    const finding = findings.find(({ check }) => check === 'job/file-not-found')
    expect(finding?.found).toBe('Partsbolts.wright')
    expect(finding?.todo).toMatch(/^Write \/ between the folders/)
  })

  it('no path leads out of the folder', () => {
    const found = problems('out.wright')
    expect(found.map(({ type }) => type)).toEqual(Array.from({ length: 10 }, () => 'use-outside'))
    expect(used('out.wright')).toEqual([])
  })

  it('a link to another disk is not followed, one to a folder inside is', () => {
    expect(problems('linked.wright')).toEqual([{ type: 'use-missing', path: 'Away/far.wright' }])
    expect(used('linked.wright')).toEqual(['Near/bolts.wright'])
  })

  it('a file has one spelling, as on every other disk', () => {
    expect(problems('capitals.wright')).toEqual([
      {
        type: 'file-unreadable',
        why: 'on the disk it is named Parts/bolts.wright',
        path: 'parts/Bolts.wright',
      },
      { type: 'file-unreadable', why: 'on the disk it is named boat.wright', path: 'BOAT.wright' },
    ])
    expect(problems('dot.wright').map((problem) => 'why' in problem && problem.why)).toEqual([
      'on the disk it is named boat.wright',
      'on the disk it is named Parts/bolts.wright',
    ])
    // How the disk keeps an accent cannot be seen.
    expect(used('accent.wright')).toEqual(['café.wright'])
  })

  it('a file on another disk is read with its own folder around it', () => {
    const { file, shown } = openJob({ path: 'D:\\Away\\far.wright' })
    expect(file.used.map(shown)).toEqual(['D:/Away/near.wright'])
    expect(file.path).toBe('far.wright')
  })

  it('one file named in two ways is one file', () => {
    expect(
      jobFiles(['BOAT.wright', '.\\boat.wright', 'C:\\Jobs\\boat.wright']).map(({ path: of }) => of),
    ).toEqual(['boat.wright', 'C:\\Jobs\\boat.wright'])
    expect(jobFiles(['Parts', 'parts']).map(({ path: of }) => of)).toHaveLength(2)
  })

  it('lists the job files of a folder', async () => {
    const listed = (await listInside('C:\\Jobs')).map((at) => path.relative('C:\\Jobs', at))
    expect(listed).toContain('Parts\\bolts.wright')
    expect(listed.filter((at) => /Away|Near|node_modules/.test(at))).toEqual([])
  })
})
