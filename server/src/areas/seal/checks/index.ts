// Made by `npm run generate` from the files beside it.

import type { Check } from '../../../checks/check.ts'
import sealCompressionOutside from './compression-outside.ts'
import sealShaftSizeDiffers from './shaft-size-differs.ts'

export const checks: readonly Check[] = [sealCompressionOutside, sealShaftSizeDiffers]
