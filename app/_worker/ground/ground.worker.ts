import { expose, transfer } from 'comlink'
import { findBlob } from '@/app/_client/blobs'
import { groundService, type GroundService } from './ground-service'

const service = groundService(findBlob)
const exposed: GroundService = {
  ...service,
  async draw(terrain, unit) {
    const drawn = await service.draw(terrain, unit)
    return 'code' in drawn ? drawn : transfer(drawn, [drawn.shade.pixels.buffer])
  },
}

expose(exposed)
