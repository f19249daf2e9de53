'use client'

import dynamic from 'next/dynamic'

/** What opens in the survey, loaded when it does: its fields know what they may be from the schemas, which are a large part of all script. */
export const PlaceFields = dynamic(() => import('./place-fields').then((made) => made.PlaceFields), { ssr: false })
export const DistrictSettings = dynamic(() => import('./district-settings').then((made) => made.DistrictSettings), { ssr: false })
export const ElevationPanel = dynamic(() => import('./elevation-panel').then((made) => made.ElevationPanel), { ssr: false })
