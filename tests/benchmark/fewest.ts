import type { Row } from './measure'; export const fewestRows = (): Row[] => [];
