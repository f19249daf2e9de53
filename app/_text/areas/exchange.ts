import exchange from '../en/exchange.json'
import { addWords } from '../words'

addWords('exchange', exchange)
