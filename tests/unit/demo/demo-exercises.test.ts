import { describe, expect, it } from 'vitest'
import { demoExercises } from '@/app/_demo/documents/demo-exercises'
import { toldWords, troubleWords } from '@/app/_exercise/change-words'
import { bestAnswers, isSession, playSession, roadClosures, startSession } from '@/lib/exercise'
import { finish } from '@/lib/advise'
import { exerciseSchema } from '@/lib/plan'
import { demoBundle, demoRoads } from '@/tests/fixtures/demo-roads'

const resolve = await demoRoads()
const bundles = new Map((['gander-hill', 'school', 'yarrow-bank'] as const).map(demoBundle).map((bundle) => [bundle.plan.id as string, bundle]))
const exercises = demoExercises(bundles, { title: troubleWords, told: toldWords }, (bundle) => roadClosures(bundle, resolve))

describe('the exercises that are shipped', () => {
  it('are three documents that the store takes, each with troubles that are told in words', () => {
    expect(exercises.map(({ id }) => id)).toEqual(['exercise-easy', 'exercise-hard', 'exercise-primer'])
    for (const exercise of exercises) {
      expect(exerciseSchema.safeParse(exercise).error).toBeUndefined()
      for (const { title, told } of exercise.injects) {
        // Names, not ids.
        expect(`${title} ${told}`).not.toMatch(/(tender|engine|fill|dump|plan)-/)
        expect(told?.length).toBeGreaterThan(20)
      }
    }
  })

  it('run to their end, all of their troubles come, and the hard one bites most', () => {
    for (const { bundle, injects } of exercises) {
      const refused: unknown[] = []
      const session = startSession(bundle, injects)
      if (!isSession(session)) throw new Error(JSON.stringify(session))
      const end = playSession(session, 7200, (one) => refused.push(...(one.refused ?? [])))
      expect(refused).toEqual([])
      expect(end.facts).toHaveLength(injects.length)
    }
    expect(exercises.map(({ injects }) => injects.length)).toEqual([3, 5, 2])
    expect(exercises[1]!.injects.some(({ change }) => change.kind === 'roadClosed')).toBe(true)
    expect(exercises[2]!.injects.some(({ change }) => change.kind === 'fillRate' && change.fault === 'primer')).toBe(true)
  })

  it('have something better to be found where the primer fails and nobody acts', () => {
    const { bundle, injects } = exercises[2]!
    const end = playSession(startSession(bundle, injects) as Parameters<typeof playSession>[0], 5400)
    const answers = finish(bestAnswers(bundle, end.facts, 5400, resolve))
    const primer = answers.find(({ factId }) => end.facts.find(({ id }) => id === factId)?.change.kind === 'fillRate')!
    expect(primer.nothing.missing_gal).toBeGreaterThan(1000)
    expect(primer.best.length).toBeGreaterThan(0)
  })
})
