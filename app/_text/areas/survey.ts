import survey from '../en/survey.json'
import { addWords } from '../words'

addWords('survey', survey)
