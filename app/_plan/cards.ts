'use client'

import dynamic from 'next/dynamic'
import { BeingWorkedOut } from './being-worked-out'

/**
 * The insides of the cards. Their fields know what a document lets them be from its schemas, which are a large part of
 * all script: they come when the plan has come, together in one file, and not with the page.
 */
export const DumpCard = dynamic(() => import('./card-bodies').then((bodies) => bodies.DumpCard), { ssr: false, loading: BeingWorkedOut })
export const FillCard = dynamic(() => import('./card-bodies').then((bodies) => bodies.FillCard), { ssr: false, loading: BeingWorkedOut })
export const FireCard = dynamic(() => import('./card-bodies').then((bodies) => bodies.FireCard), { ssr: false, loading: BeingWorkedOut })
export const RoadCard = dynamic(() => import('./card-bodies').then((bodies) => bodies.RoadCard), { ssr: false, loading: BeingWorkedOut })
export const TendersCard = dynamic(() => import('./card-bodies').then((bodies) => bodies.TendersCard), { ssr: false, loading: BeingWorkedOut })

/** Fetches them before one is opened; where that fails the card itself tries again. */
export const loadCards = (): Promise<unknown> => import('./card-bodies').catch(() => undefined)
