/** Whether a text can be kept by either database: PostgreSQL takes no NUL, and half of a pair is no character. */
export function isPlainText(text: string): boolean {
  return !text.includes('\0') && !/\p{Cs}/u.test(text);
}
