import { expose } from 'comlink'
import { findBlob } from '@/app/_client/blobs'
import { refereeService } from './referee-service'

expose(refereeService(findBlob, () => new Promise((resolve) => setTimeout(resolve, 0)), () => performance.now()))
