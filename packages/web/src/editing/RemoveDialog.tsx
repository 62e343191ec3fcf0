import { type ReactNode, useState } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { reasonOf } from '../api/reason.ts';

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
    <DialogTrigger onOpenChange={() => setFailed(null)}>
      <Button className="quiet-button" aria-label={spoken}>
        Remove
      </Button>
      <ModalOverlay className="dialog-veil" isDismissable>
        <Modal className="dialog">
          <Dialog role="alertdialog">
            {({ close }) => (
              <>
                <Heading slot="title">{title}</Heading>
                <p>{children}</p>
                <p role="status" className="tone-warning">
                  {failed && `Not removed. ${failed}`}
                </p>
                <div className="form-actions">
                  <Button
                    className="plain-button warning-button"
                    isPending={removing}
                    onPress={() => void remove(close)}
                  >
                    Remove
                  </Button>
                  <Button className="plain-button" onPress={close} autoFocus>
                    {keep}
                  </Button>
                </div>
              </>
            )}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
