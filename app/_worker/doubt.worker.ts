import { expose } from 'comlink'
import { doubtService } from './doubt-service'

expose(doubtService())
