import { buildIfStale } from './build-if-stale.mjs'

buildIfStale()
