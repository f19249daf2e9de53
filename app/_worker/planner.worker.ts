import { expose } from 'comlink'
import { findBlob } from '@/app/_client/blobs'
import { plannerService } from './planner-service'

expose(plannerService(findBlob, () => new Promise((resolve) => setTimeout(resolve, 0))))
