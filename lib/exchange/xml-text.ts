/**
 * A text as XML can hold it: the control characters that XML 1.0 (section 2.2) has no way to write are left out. A
 * carriage return is written as a reference by the writer, so that it is not taken for the end of a line.
 */
export const xmlText = (text: string): string => text.replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '')
