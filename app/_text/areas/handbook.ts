import handbook from '../en/handbook.json'
import { addWords } from '../words'

addWords('handbook', handbook)
