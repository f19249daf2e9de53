/**
 * What applies edits to a document and sends them. It checks them by the schemas, which are a large part of all script:
 * loaded with the first document that is opened, not with the page.
 */
export { addUnsent, newReplica, receive, resolveConflict } from './replica'
export { sendQueue } from './send-queue'
