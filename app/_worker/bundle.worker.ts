import { expose } from 'comlink'
import type { Bundle } from '@/lib/plan'
import { findBlob } from '../_client/blobs'
import { BundleMaker, type WholeBundle } from './whole-bundle'

/** What the worker that makes a plan whole for a file offers. */
export type BundleService = { make(bundle: Bundle): Promise<WholeBundle> }

const maker = new BundleMaker(findBlob)

const service: BundleService = { make: (asked) => maker.make(asked) }

expose(service)
