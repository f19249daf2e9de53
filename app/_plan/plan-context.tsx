'use client'

import { createContext, use } from 'react'
import type { ReactNode } from 'react'
import type { SupplyResult } from '@/lib/supply'
import type { District, EditBody, Leg, NoLeg, Plan } from '@/lib/plan'
import type { NameOf } from '../_text'

/** What the cards of the planner share: the documents, the answer, and how to change them. */
export type PlanBoard = {
  district: District
  plan: Plan
  result: SupplyResult | undefined
  /** The first answer is being worked out: what it will say is not known yet, which is not the same as nothing. */
  isWorking: boolean
  /** Ways that were found, for cards that look at the ground under them. */
  legs?: readonly (Leg | NoLeg)[]
  names: NameOf
  /** One act of the user; a refusal is told in a line. @returns whether it was taken */
  editPlan: (body: EditBody | readonly EditBody[], label: string) => boolean
  editDistrict: (body: EditBody | readonly EditBody[], label: string) => boolean
  editBoth: (changes: { district: readonly EditBody[]; plan: readonly EditBody[] }, label: string) => boolean
  newId: () => string
  select: (id: string | undefined) => void
  selectedId: string | undefined
}

const BoardContext = createContext<PlanBoard | undefined>(undefined)

export function PlanBoardProvider({ board, children }: { board: PlanBoard; children: ReactNode }) {
  return <BoardContext value={board}>{children}</BoardContext>
}

/** @throws Error outside the planner */
export function usePlanBoard(): PlanBoard {
  const board = use(BoardContext)
  if (!board) throw new Error('a card must stand inside the planner')
  return board
}
