import type { ReactNode } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';

interface AskFirstProps {
  /** What opens the question. */
  button: ReactNode;
  title: string;
  /** Opened or closed: what an earlier try came to is forgotten. */
  onOpenChange(): void;
  /** What it is about, and what came of it. */
  children: ReactNode;
  /** Buttons under it. */
  actions(close: () => void): ReactNode;
}

/** A button that asks before it does what cannot be taken back. */
export function AskFirst({ button, title, onOpenChange, children, actions }: AskFirstProps) {
  return (
    <DialogTrigger onOpenChange={onOpenChange}>
      {button}
      <ModalOverlay className="dialog-veil" isDismissable>
        <Modal className="dialog">
          <Dialog role="alertdialog">
            {({ close }) => (
              <>
                <Heading slot="title">{title}</Heading>
                {children}
                <div className="form-actions">{actions(close)}</div>
              </>
            )}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}

interface RemoveNowProps {
  isPending: boolean;
  onPress(): void;
}

export function RemoveNow({ isPending, onPress }: RemoveNowProps) {
  return (
    <Button className="plain-button warning-button" isPending={isPending} onPress={onPress}>
      Remove
    </Button>
  );
}
