import devices from '../en/devices.json'
import { addWords } from '../words'

addWords('devices', devices)
