import { say } from '../_text'
import '../_text/areas/archive'
import buttons from '../_ui/button.module.css'
import { joinClasses } from '../_ui/join-classes'

/** Downloads a district whole, in one file. */
export function SaveArchive({ id, name }: { id: string; name: string }) {
  return (
    <a className={joinClasses(buttons.button, buttons.plain, buttons.small)} href={`/api/districts/${encodeURIComponent(id)}/archive`} download aria-label={say('archive.save-of', { name })}>
      <span className={buttons.label}>{say('archive.save')}</span>
    </a>
  )
}
