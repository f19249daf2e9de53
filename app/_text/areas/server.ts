import server from '../en/server.json'
import { addWords } from '../words'

addWords('server', server)
