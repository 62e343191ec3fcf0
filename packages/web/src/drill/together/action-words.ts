/** What was done in a drill, in words. */
export {
  actionWords,
  faultWords,
  hoseWords,
  pieceName,
  portName,
  valveName,
} from '@plugside/drill';
