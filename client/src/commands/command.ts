import type { LanguageServer } from '../language-server.ts'

/** A command of the palette; its title stands in package.json under the same id. `on`: what it was chosen for, such as the file whose menu it was in. */
export type Command = { readonly id: string; readonly run: (server: LanguageServer, on: unknown) => unknown }
