'use client'

import { useDocumentList } from '../_client'
import { say } from '../_text'
import '../_text/areas/home'
import { EmptyState } from '../_ui/empty-state'
import { DistrictList } from './district-list'
import { homeDistricts } from './home-districts'
import { PutAwayList } from '../_frame/put-away-list'

/** The districts of the station; with it out of reach, those this device knows of. Archives are saved at the station itself only. */
export function OwnDistricts({ isStation }: { isStation: boolean }) {
  const { status, entries } = useDocumentList()
  const districts = homeDistricts(entries)
  if (status === 'loading') return <p role="status">{say('home.loading')}</p>
  if (status === 'unreachable') return <EmptyState title={say('home.unreachable')} text={say('home.unreachable.text')} />
  return (
    <>
      {districts.length > 0 ? <DistrictList districts={districts} isStation={isStation} /> : <EmptyState title={say('home.empty')} text={say('home.empty.text')} />}
      {isStation && <PutAwayList />}
    </>
  )
}
