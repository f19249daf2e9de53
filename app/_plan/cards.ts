'use client'

import dynamic from 'next/dynamic'
import { BeingWorkedOut } from './being-worked-out'

/**
 * The insides of the cards. Their fields know what a document lets them be from its schemas, which are a large part of
 * all script: they come when the plan has come, together in one file, and not with the page.
 */
const bodies = () => import('./card-bodies')
const options = { ssr: false, loading: BeingWorkedOut }

export const DumpCard = dynamic(() => bodies().then(({ DumpCard: card }) => card), options)
export const FillCard = dynamic(() => bodies().then(({ FillCard: card }) => card), options)
export const FireCard = dynamic(() => bodies().then(({ FireCard: card }) => card), options)
export const RoadCard = dynamic(() => bodies().then(({ RoadCard: card }) => card), options)
export const TendersCard = dynamic(() => bodies().then(({ TendersCard: card }) => card), options)
