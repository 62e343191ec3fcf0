import { useState } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { type DrillRun, ProblemError, removeDrillRun } from '../../api/index.ts';
import { reasonOf } from '../../api/reason.ts';

interface RemoveDrillProps {
  run: DrillRun;
  endedAt: string;
  /** It is gone. */
  onRemoved(): void;
}

/** Asks before a past drill goes out of the records. */
export function RemoveDrill({ run, endedAt, onRemoved }: RemoveDrillProps) {
  const [failed, setFailed] = useState<string | null>(null);
  const [removing, setRemoving] = useState(false);
  const { roomId, title, startedAt } = run;
  const named = `${title}, ${new Date(startedAt).toLocaleString()}`;
  const remove = async (close: () => void) => {
    setRemoving(true);
    setFailed(null);
    try {
      await removeDrillRun(roomId, endedAt);
    } catch (error) {
      // Somebody else has removed it: that is what was asked for.
      if (!(error instanceof ProblemError && error.status === 404)) {
        setFailed(reasonOf(error));
        return;
      }
    } finally {
      setRemoving(false);
    }
    close();
    onRemoved();
  };
  return (
    <DialogTrigger onOpenChange={() => setFailed(null)}>
      <Button className="quiet-button" aria-label={`Remove ${named}`}>
        Remove
      </Button>
      <ModalOverlay className="dialog-veil" isDismissable>
        <Modal className="dialog">
          <Dialog role="alertdialog">
            {({ close }) => (
              <>
                <Heading slot="title">Remove {title}?</Heading>
                <p>
                  The drill of {new Date(startedAt).toLocaleString()}
                  {run.crew !== undefined && `, ${run.crew},`} goes out of the records for good,
                  with its log, its replay and its score. A backup that was taken before still has
                  it.
                </p>
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
                    Keep it
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
