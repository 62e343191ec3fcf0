import { type ReactNode, useState } from 'react';
import { Button } from 'react-aria-components';
import { reasonOf } from '../api/reason.ts';
import { AskFirst, RemoveNow } from './AskFirst.tsx';

interface RemoveDialogProps {
  /** What is asked: "Remove the heights of relief.tif?" */
  title: string;
  /** Of the button that opens it, where "Remove" alone would not tell which. */
  spoken?: string;
  /** On the button that leaves everything as it is. */
  keep: string;
  /** Removes it; what it throws is told, and the question stays. */
  onRemove(): Promise<void>;
  /** What goes, and what it changes. */
  children: ReactNode;
}

/** A button that asks before something goes out of the records. */
export function RemoveDialog({ title, spoken, keep, onRemove, children }: RemoveDialogProps) {
  const [failed, setFailed] = useState<string | null>(null);
  const [removing, setRemoving] = useState(false);
  const remove = async (close: () => void) => {
    setRemoving(true);
    setFailed(null);
    try {
      await onRemove();
      close();
    } catch (error) {
      setFailed(reasonOf(error));
    } finally {
      setRemoving(false);
    }
  };
  return (
    <AskFirst
      button={
        <Button className="quiet-button" aria-label={spoken}>
          Remove
        </Button>
      }
      title={title}
      onOpenChange={() => setFailed(null)}
      actions={(close) => (
        <>
          <RemoveNow isPending={removing} onPress={() => void remove(close)} />
          <Button className="plain-button" onPress={close} autoFocus>
            {keep}
          </Button>
        </>
      )}
    >
      <p>{children}</p>
      <p role="status" className="tone-warning">
        {failed && `Not removed. ${failed}`}
      </p>
    </AskFirst>
  );
}
