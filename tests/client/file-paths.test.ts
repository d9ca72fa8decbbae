import { describe, expect, it } from 'vitest'
import { fileNameFor, freeName, isJobFile, isSearched, stepsBelow } from '../../client/src/file-paths.ts'

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

describe('the name of a new job file', () => {
  it.each([
    ['Launch 07', 'launch-07'],
    ['  M/V "Ærø" – 2  ', 'm-v-ærø-2'],
    ['../..', 'job'],
    ['船 1', '船-1'],
    ['x'.repeat(300), 'x'.repeat(60)],
  ])('%s', (vessel, name) => {
    expect(fileNameFor(vessel)).toBe(name)
  })
})

it('gives a new job a name that no file has', async () => {
  const taken = ['survey-launch.wright', 'survey-launch-2.wright']
  expect(await freeName('survey-launch', async () => false)).toBe('survey-launch.wright')
  expect(await freeName('survey-launch', async (name) => taken.includes(name))).toBe('survey-launch-3.wright')
})
