import { Icon } from '../_look/icon'
import { formatNumber, say } from '../_text'
import '../_text/areas/book'
import buttons from '../_ui/button.module.css'
import { joinClasses } from '../_ui/join-classes'
import styles from './book.module.css'
import type { PrintedFile } from './use-printing'

/** The file that was made: to keep, or to look at and print. */
export function PrintedFileRow({ file: { address, name, pageCount, bytes, unwritten } }: { file: PrintedFile }) {
  return (
    <div className={styles.file}>
      <p className={styles.fileName}>{say('book.file.made', { name, pages: pageCount, size: formatNumber(Math.max(1, Math.round(bytes / 1000))) })}</p>
      {unwritten !== '' && <p className={styles.fileName}>{say('book.file.unwritten', { signs: unwritten })}</p>}
      <a className={joinClasses(buttons.button, buttons.primary)} href={address} download={name}><Icon name="print" /><span className={buttons.label}>{say('book.file.save')}</span></a>
      <a className={joinClasses(buttons.button, buttons.plain)} href={address} target="_blank" rel="noreferrer"><span className={buttons.label}>{say('book.file.open')}</span></a>
    </div>
  )
}
