import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { replace, takeOut, textAt } from '../fix-text.ts'

/** Signs that show as nothing, or as a blank. */
const invisible = /[\p{C}\p{Z}\u115F\u1160\u3164\uFFA0]/gu

const number = (sign: string): string =>
  `U+${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`

/** The text, with the number of each sign in it that cannot be seen. */
const shown = (text: string): string =>
  elide(text.trim()).replace(invisible, (sign) => (sign === ' ' ? sign : number(sign)))

function quoted(text: string): string {
  const [sign, more] = new Set(text)
  if (sign === undefined || shown(text) === '') return 'This'
  return more === undefined && sign.match(invisible)
    ? `${number(sign)}, a sign that cannot be seen,`
    : shown(text)
}

/** What to do about a sign that people bring along from elsewhere. */
function todoFor(text: string): string {
  if (/^(\/\/|\/\*|\*\/)/.test(text)) return 'Begin a comment with #.'
  if (text.startsWith('{')) return 'Begin a block inside another on a line of its own.'
  return 'Delete it, or put it in quotes or after a #.'
}

export default problemCheck({
  id: 'job/unreadable',
  problem: 'unreadable',
  severity: 'error',
  title: 'Text that cannot be read',
  why: 'What cannot be read is not checked. Everything else is.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm ;
#                     ^ cannot be read
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p) => ({
    message: `${quoted(p.text)} cannot be read here.`,
    todo: todoFor(p.text),
    found: shown(p.text),
  }),
  fixes: ({ at }) => {
    const fix = { preferred: true, uncovers: true } as const
    if (textAt(at) === ';') return [{ ...fix, title: 'Delete the ;', edits: [takeOut(at.section, at.span)] }]
    if (/^\/{2,}$/.test(textAt(at)))
      return [{ ...fix, title: 'Begin the comment with #', edits: [replace(at, '#')] }]
    return []
  },
})
