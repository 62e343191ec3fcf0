import { useState } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { removeTerrain } from '../../api/elevation.ts';
import { reasonOf } from '../../api/reason.ts';

/** Asks before the heights of the ground are taken out of the records. */
export function RemoveTerrain({ name, onRemoved }: { name: string; onRemoved(): void }) {
  const [removing, setRemoving] = useState(false);
  const [failed, setFailed] = useState<string | null>(null);
  const remove = async (close: () => void) => {
    setRemoving(true);
    try {
      await removeTerrain();
      close();
      onRemoved();
    } catch (error) {
      setFailed(reasonOf(error));
    } finally {
      setRemoving(false);
    }
  };
  return (
    <DialogTrigger onOpenChange={() => setFailed(null)}>
      <Button className="quiet-button">Remove</Button>
      <ModalOverlay className="dialog-veil" isDismissable>
        <Modal className="dialog">
          <Dialog role="alertdialog">
            {({ close }) => (
              <>
                <Heading slot="title">Remove the heights of {name}?</Heading>
                <p>
                  Lays then rise and fall by the heights in the records alone, else they are taken
                  as level: pressures and flows of many plans change. To have the heights back, load
                  the file again.
                </p>
                <p role="alert" className="tone-warning">
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
                    Keep them
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
