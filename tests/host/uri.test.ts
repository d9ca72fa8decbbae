import { describe, expect, it } from 'vitest'
import { folderOf, isWithin, keyOf, uriOf } from '../../server/src/host/uri.ts'

describe('URIs', () => {
  it('are one key however they are spelt (RFC 3986, section 6.2.2)', () => {
    expect(keyOf('file:///C%3A/Boats/a%20b.wright')).toBe('file:///c:/Boats/a b.wright')
    expect(keyOf('file:///c:/Boats/a b.wright')).toBe('file:///c:/Boats/a b.wright')
  })

  it('are escaped again', () => {
    expect(uriOf('file:///jobs/50% & ü#1.wright')).toBe('file:///jobs/50%25%20%26%20%C3%BC%231.wright')
  })

  it('are escaped with half a character in them too, which no escape can say (ECMA-262, Encode)', () => {
    expect(uriOf('file:///jobs/\ud83d.wright')).toBe('file:///jobs/%EF%BF%BD.wright')
  })

  it('of files that only a browser reaches are spelt alike too', () => {
    expect(keyOf('vscode-vfs://host%2Bbranch/a%20b.wright')).toBe('vscode-vfs://host+branch/a b.wright')
    expect(uriOf('vscode-vfs://host+branch/a b.wright')).toBe('vscode-vfs://host%2Bbranch/a%20b.wright')
  })

  it('with a broken escape, or without folders, stay as they are', () => {
    expect(keyOf('file:///a/100%.wright')).toBe('file:///a/100%.wright')
    expect(keyOf('untitled:Untitled-1')).toBe('untitled:Untitled-1')
    expect(uriOf('untitled:Untitled-1')).toBe('untitled:Untitled-1')
  })

  it('have a folder only where there are folders', () => {
    expect(folderOf('file:///jobs/a.wright')).toBe('file:///jobs')
    expect(folderOf('untitled:Untitled-1')).toBeUndefined()
    expect(isWithin('file:///jobs-old/a.wright', 'file:///jobs')).toBe(false)
  })
})
