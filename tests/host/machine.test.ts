import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { listInside } from '../../server/src/host/machine-node.ts'

describe('the job files below a folder', () => {
  const base = mkdtempSync(join(tmpdir(), 'shaftwright-'))
  const root = join(base, 'jobs')
  const put = (...path: readonly string[]) => {
    mkdirSync(join(base, ...path.slice(0, -1)), { recursive: true })
    writeFileSync(join(base, ...path), '')
  }
  afterAll(() => rmSync(base, { recursive: true }))

  it('are those that really lie in it; no package and no hidden folder is gone into', async () => {
    put('outside.wright')
    put('beside', 'c.wright')
    put('jobs', 'b.wright')
    put('jobs', 'a b', 'deep', 'a.wright')
    put('jobs', 'notes.txt')
    put('jobs', 'node_modules', 'x', 'x.wright')
    put('jobs', '.git', 'y.wright')
    mkdirSync(join(root, 'folder.wright'))
    symlinkSync(join(base, 'outside.wright'), join(root, 'out.wright'))
    symlinkSync(join(base, 'beside'), join(root, 'beside'))
    symlinkSync(root, join(root, 'round'))
    symlinkSync(join(root, 'nothing'), join(root, 'nothing.wright'))
    symlinkSync(join(root, 'b.wright'), join(root, 'in.wright'))
    expect(await listInside(root)).toEqual(
      [join('a b', 'deep', 'a.wright'), 'b.wright', 'in.wright'].map((path) => join(root, path)),
    )
  })

  it('are none where there is no such folder, or no folder any more', async () => {
    const unread: string[] = []
    expect(await listInside(join(base, 'no'), (folder) => unread.push(folder))).toEqual([])
    expect(await listInside(join(base, 'outside.wright'), (folder) => unread.push(folder))).toEqual([])
    expect(unread).toEqual([])
  })

  // A name that is no UTF-8 cannot be asked for again, by root either.
  it('are listed without those in a folder that cannot be read, which is told with the reason', async () => {
    put('fleet', 'a.wright')
    put('fleet', 'z', 'z.wright')
    mkdirSync(Buffer.concat([Buffer.from(join(base, 'fleet', 'bad')), Buffer.from([0xff])]))
    const unread: (readonly string[])[] = []
    expect(await listInside(join(base, 'fleet'), (folder, why) => unread.push([folder, why]))).toEqual(
      ['a.wright', join('z', 'z.wright')].map((path) => join(base, 'fleet', path)),
    )
    expect(unread).toEqual([[join(base, 'fleet', 'bad\uFFFD'), 'its name is not UTF-8 text']])
  })
})
