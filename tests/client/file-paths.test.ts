import { describe, expect, it } from 'vitest'
import { isJobFile, isSearched, stepsBelow } from '../../client/src/file-paths.ts'

const at = (path: string, { scheme = 'vscode-vfs', authority = 'host' } = {}) => ({ scheme, authority, path })

// Parts of a URI and their meaning: RFC 3986, section 3; `.` and `..`: section 5.2.4.
describe('a file lies below a folder', () => {
  it.each([
    ['/jobs', '/jobs/boat.wright', ['boat.wright']],
    ['/jobs/', '/jobs/boat.wright', ['boat.wright']],
    ['/', '/parts/shafts.wright', ['parts', 'shafts.wright']],
    ['', '/parts/shafts.wright', ['parts', 'shafts.wright']],
    ['/jobs', '/jobs/a b/½.wright', ['a b', '½.wright']],
    ['/jobs', '/jobs/..boat.wright', ['..boat.wright']],
  ])('%s has %s', (folder, file, steps) => {
    expect(stepsBelow(at(folder), at(file))).toEqual(steps)
  })

  it.each([
    ['/jobs', '/jobs'],
    ['/jobs', '/jobs/'],
    ['/jobs', '/jobs2/boat.wright'],
    ['/jobs', '/other/boat.wright'],
    ['/jobs', '/Jobs/boat.wright'],
    ['/jobs', '/jobs/../secret.wright'],
    ['/jobs', '/jobs/parts/../../secret.wright'],
    ['/jobs', '/jobs/./boat.wright'],
    ['/jobs', '/jobs//boat.wright'],
    ['/jobs', '/jobs/..\\secret.wright'],
    ['/jobs', '/jobs/parts\\boat.wright'],
  ])('%s has not %s', (folder, file) => {
    expect(stepsBelow(at(folder), at(file))).toBeUndefined()
  })

  it('only of its own scheme and authority', () => {
    const file = '/jobs/boat.wright'
    expect(stepsBelow(at('/jobs'), at(file, { scheme: 'file' }))).toBeUndefined()
    expect(stepsBelow(at('/jobs'), at(file, { authority: 'another' }))).toBeUndefined()
  })
})

describe('job files are looked for', () => {
  it('in folders that are no library of Node and not hidden', () => {
    expect(['parts', 'node_modules.old', 'jobs 2026'].filter(isSearched)).toHaveLength(3)
    expect(['node_modules', '.git', '.'].filter(isSearched)).toEqual([])
  })

  it('by their ending', () => {
    expect(['a.wright', 'a.wright.txt', 'wright', 'a.WRIGHT'].filter(isJobFile)).toEqual(['a.wright'])
  })
})
