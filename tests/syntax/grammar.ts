import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join, resolve } from 'node:path'
import oniguruma from 'vscode-oniguruma'
import textmate from 'vscode-textmate'

/** The grammar as an editor loads it. */
export async function loadGrammar(): Promise<textmate.IGrammar> {
  const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm')
  await oniguruma.loadWASM(new Uint8Array(readFileSync(wasm)).buffer)
  const file = join(resolve(import.meta.dirname, '../..'), 'syntaxes/shaftwright.tmLanguage.json')
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(readFileSync(file, 'utf8'), file),
  })
  const grammar = await registry.loadGrammar('source.shaftwright')
  if (!grammar) throw new Error('no grammar')
  return grammar
}
