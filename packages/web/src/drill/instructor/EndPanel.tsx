import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import type { RoomLink } from '../together/room-link.ts';

/** Ends the drill for everyone, once asked again. */
export function EndPanel({ link, isHere }: { link: RoomLink; isHere: boolean }) {
  return (
    <DialogTrigger>
      <Button className="plain-button end-button" isDisabled={!isHere}>
        End the drill
      </Button>
      <ModalOverlay className="room-overlay" isDismissable>
        <Modal className="room-modal">
          <Dialog className="room-dialog" role="alertdialog">
            {({ close }) => (
              <>
                <Heading slot="title">End the drill for everyone?</Heading>
                <p>It is judged as it stands, and kept to be looked at again. It cannot go on.</p>
                <div className="room-actions">
                  <Button
                    className="plain-button main-button"
                    onPress={() => {
                      link.ask({ type: 'end' });
                      close();
                    }}
                  >
                    End it
                  </Button>
                  <Button className="plain-button" onPress={close}>
                    Let it run
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
