import { serve } from './serve-node.ts'

serve()
