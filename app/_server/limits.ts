/** The most that one request may carry. */
export const DOCUMENT_LIMIT_MB = 2
export const BLOB_LIMIT_MB = 64

/** The most that the file of a district archive may have. */
export const ARCHIVE_LIMIT_MB = 256

/** The most edits that one request may carry: a long time away, not an endless one. */
export const EDITS_AT_ONCE = 2000

/** The most events that one request may carry, and that one log may hold: days of logging, not an endless flood. */
export const EVENTS_AT_ONCE = 2000
export const EVENTS_OF_A_LOG = 50_000
