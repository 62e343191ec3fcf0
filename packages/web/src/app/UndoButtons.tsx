import { Button } from 'react-aria-components';

interface UndoButtonsProps {
  /** What would be taken back, and what brought back; undefined where there is nothing. */
  before: string | undefined;
  after: string | undefined;
  undo: () => void;
  redo: () => void;
}

/** Back and forth over the changes of a history. */
export function UndoButtons({ before, after, undo, redo }: UndoButtonsProps) {
  return (
    <>
      <Button
        className="quiet-button"
        isDisabled={before === undefined}
        onPress={undo}
        aria-label={before === undefined ? 'Undo' : `Undo: ${before}`}
      >
        Undo
      </Button>
      <Button
        className="quiet-button"
        isDisabled={after === undefined}
        onPress={redo}
        aria-label={after === undefined ? 'Redo' : `Redo: ${after}`}
      >
        Redo
      </Button>
    </>
  );
}
