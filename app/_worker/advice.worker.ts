import { expose } from 'comlink'
import { findBlob } from '@/app/_client/blobs'
import { adviceService } from './advice-service'

expose(adviceService(findBlob, () => new Promise((resolve) => setTimeout(resolve, 0)), () => performance.now()))
