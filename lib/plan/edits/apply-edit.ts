import type { Issue } from '../../issue'
import { addItem } from './add-item'
import type { EditableDocument } from './document-kind'
import type { Applied, EditBody } from './edit'
import { moveSite } from './move-site'
import { removeItem } from './remove-item'
import { setFields } from './set-fields'

/**
 * Applies one edit to a district or a plan.
 *
 * @returns the new document, the inverse edit and the paths touched (`fillSites/F1/lift_ft`), or the issue why not;
 *          the given document is never changed
 */
export function applyEdit<D extends EditableDocument>(doc: D, edit: EditBody): Applied<D> | Issue {
  switch (edit.kind) {
    case 'addItem':
      return addItem(doc, edit)
    case 'removeItem':
      return removeItem(doc, edit)
    case 'setFields':
      return setFields(doc, edit)
    case 'moveSite':
      return moveSite(doc, edit)
  }
}
