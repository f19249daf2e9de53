'use client'

import { createContext, use } from 'react'
import type { District, EditBody, Place, SurveyKind } from '@/lib/plan'
import type { NameOf } from '../_text'

/** What is placed by the next tap: something new, or a place that stands elsewhere. */
export type Placing = { kind: SurveyKind; sourceId?: string; moveId?: string }

export type SurveyBoard = {
  district: District
  names: NameOf
  selectedId: string | undefined
  /** Opens the card of a place and shows it on the map; undefined closes it. */
  select: (id: string | undefined) => void
  placing: Placing | undefined
  /** Asks for the place on the map; undefined gives it up. */
  place: (placing: Placing | undefined) => void
  /** @returns whether it was done; a refusal is told in a line */
  edit: (body: EditBody | readonly EditBody[], label: string) => boolean
  remove: (place: Place) => void
}

const SurveyContext = createContext<SurveyBoard | undefined>(undefined)
export const SurveyProvider = SurveyContext.Provider

/** @throws Error outside the survey screen */
export function useSurvey(): SurveyBoard {
  const board = use(SurveyContext)
  if (!board) throw new Error('useSurvey stands outside the survey')
  return board
}
