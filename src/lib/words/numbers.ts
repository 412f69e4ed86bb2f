/** Small numbers in words. */
const NUMBERS = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** `three`, `no` for none; in figures above twelve. */
export const numberWords = (n: number): string => NUMBERS[n] ?? String(n);
