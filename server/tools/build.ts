// npm run build
import { bundle } from './bundles.ts'

await bundle('development')
