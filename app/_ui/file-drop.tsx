'use client'

import { useRef, useState, type DragEvent, type ReactNode } from 'react'
import { Button } from './button'
import styles from './file-drop.module.css'
import { joinClasses } from './join-classes'

export type FileDropProps = {
  /** What is chosen, for those who hear it; `label` stands on the button. */
  name: string
  label: string
  look: 'primary' | 'plain'
  /** Kinds of files, as the browser's own choice of files takes them. */
  accept: string
  isMany?: boolean
  onFiles: (files: readonly File[]) => void
  children?: ReactNode
}

/** Takes files by a button or dropped on it; one alone unless `isMany`. */
export function FileDrop({ name, label, look, accept, isMany = false, onFiles, children }: FileDropProps) {
  const input = useRef<HTMLInputElement>(null)
  const [isOver, setOver] = useState(false)
  const take = (files: FileList | null) => {
    const wanted = [...(files ?? [])].slice(0, isMany ? undefined : 1)
    if (wanted.length > 0) onFiles(wanted)
  }
  const drop = (event: DragEvent) => {
    event.preventDefault()
    setOver(false)
    take(event.dataTransfer.files)
  }
  return (
    <div
      className={joinClasses(styles.drop, isOver && styles.over)}
      onDragOver={(event) => { event.preventDefault(); setOver(true) }} onDragLeave={() => { setOver(false) }} onDrop={drop}
    >
      <Button look={look} icon="add" label={label} onClick={() => input.current?.click()} />
      {children}
      <input
        ref={input} type="file" multiple={isMany} accept={accept} hidden aria-label={name}
        onChange={(event) => { take(event.target.files); event.target.value = '' }}
      />
    </div>
  )
}
