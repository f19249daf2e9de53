import drill from '../en/drill.json'
import { addWords } from '../words'

addWords('drill', drill)
