'use client'

import dynamic from 'next/dynamic'

/** The inside of an opened card, loaded when one is: its fields know what they may be from the schemas, which are a large part of all script. */
export const ResourceBody = dynamic(() => import('./resource-body').then((made) => made.ResourceBody), { ssr: false })
