import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { replace, takeOut, textAt } from '../fix-text.ts'

/** Signs that show as nothing, or as a blank. */
const unseen = /[\p{C}\p{Z}\u115F\u1160\u3164\uFFA0]/gu

const number = (sign: string): string =>
  `U+${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`

/** The text, with the number of each sign in it that cannot be seen. */
const shown = (text: string): string =>
  elide(text.trim()).replace(unseen, (sign) => (sign === ' ' ? sign : number(sign)))

function said(text: string): string {
  const [sign, more] = new Set(text)
  if (sign === undefined || shown(text) === '') return 'This'
  return more === undefined && sign.match(unseen)
    ? `${number(sign)}, a sign that cannot be seen,`
    : shown(text)
}

/** What to do about a sign that people bring along from elsewhere. */
function todoFor(text: string): string {
  if (/^(\/\/|\/\*|\*\/)/.test(text)) return 'A comment begins with #.'
  if (text.startsWith('{')) return 'A block inside another begins on a line of its own.'
  return 'Take it out, or put it in quotes or behind a #.'
}

export default problemCheck({
  id: 'job/unreadable',
  problem: 'unreadable',
  severity: 'error',
  title: 'Text that cannot be read',
  why: 'What cannot be read is not checked; the rest is.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm ;
#                     ^ cannot be read
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p) => ({
    message: `${said(p.text)} cannot be read here.`,
    todo: todoFor(p.text),
    found: shown(p.text),
  }),
  fixes: ({ at }) => {
    const fix = { preferred: true, uncovers: true } as const
    if (textAt(at) === ';')
      return [{ ...fix, title: 'Take the ; out', edits: [takeOut(at.section, at.span)] }]
    if (/^\/{2,}$/.test(textAt(at))) return [{ ...fix, title: 'Write #', edits: [replace(at, '#')] }]
    return []
  },
})
