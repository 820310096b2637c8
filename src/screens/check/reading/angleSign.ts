/** Whether what is typed begins with a minus, as phones and people write it. */
export function isMinus(text: string): boolean {
  return /^\s*[-−–]/.test(text);
}

export function withSign(text: string, minus: boolean): string {
  const bare = text.replace(/^\s*[-−–+]?\s*/, "");
  return minus ? `-${bare}` : bare;
}
