import type { Area } from '../../src/areas/common/area.ts'
import type { Figure } from '../../src/areas/common/figure.ts'
import { unitOf } from '../../src/areas/common/figure-units.ts'
import { areas } from '../../src/areas/index.ts'
import { code, madeBy, table } from './markdown.ts'

const anchor = (id: string): string => id.replace('/', '')

/** `one for each foot`, `along the speed`. */
const many = ({ keys, over }: Figure): readonly string[] => [
  ...(keys ?? []).map((key) => `One for each \`${key}\`.`),
  ...(over ? [`A series along the ${over.title}.`] : []),
]

const section = (figure: Figure): string => {
  const { id, title, on, doc, formula, source } = figure
  return [
    `## ${id}`,
    [`**${title}** (\`${on}\`, in ${code(unitOf(figure)?.name ?? '1')}). ${doc}`, ...many(figure)].join(' '),
    ...(formula === undefined ? [] : [`Formula: ${formula}`]),
    `Source (${source.basis}): ${source.text}.`,
  ].join('\n\n')
}

const page = ({ title, page, figures }: Area): string => `${madeBy}
# Results: ${title}

How they are calculated in detail: [${page}](../${page}).

${table(
  ['result', 'of', 'what'],
  figures.map(({ id, on, title }) => [`[${id}](#${anchor(id)})`, code(on), title]),
)}

${figures.map(section).join('\n\n')}
`

const withFigures = areas.filter(({ figures }) => figures.length > 0)

const index = `${madeBy}
# Results

What Shaftwright calculates from a job. \`shaftwright results\` prints it, with limits and margins; hovers, lenses and hints show it in the editor.

${table(
  ['area', 'results'],
  withFigures.map(({ name, title, figures }) => [
    `[${title}](${name}.md) (\`--area ${name}\`)`,
    figures.map(({ title }) => title.replace(/^./, (c) => c.toLowerCase())).join(', '),
  ]),
)}
`

/** A page for each area that has results, and a list of them. */
export const resultPages = (): Readonly<Record<string, string>> => ({
  'docs/results/README.md': index,
  ...Object.fromEntries(withFigures.map((area) => [`docs/results/${area.name}.md`, page(area)])),
})
