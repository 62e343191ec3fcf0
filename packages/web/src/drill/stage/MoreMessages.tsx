import { memo } from 'react';
import {
  Button,
  Dialog,
  DialogTrigger,
  Heading,
  Menu,
  MenuItem,
  Modal,
  ModalOverlay,
} from 'react-aria-components';

interface MoreMessagesProps {
  /** Key and words. A new list draws the messages anew: keep the one there is while it says the same. */
  messages: readonly { key: string; words: string }[];
  onPick(key: string): void;
}

/**
 * The messages that are said seldom, in a sheet of their own. The drill under it is drawn many times a
 * second and changes its height: the sheet keeps to the screen and is drawn once, so that no message
 * moves away from the finger.
 */
export const MoreMessages = memo(function MoreMessages({ messages, onPick }: MoreMessagesProps) {
  return (
    <DialogTrigger>
      <Button className="plain-button">More…</Button>
      <ModalOverlay className="sheet-veil" isDismissable>
        <Modal className="message-sheet">
          <Dialog className="message-dialog">
            {({ close }) => (
              <>
                <div className="message-head">
                  <Heading slot="title">More messages</Heading>
                  <Button className="quiet-button" onPress={close}>
                    Say nothing
                  </Button>
                </div>
                <Menu
                  className="message-list"
                  aria-label="More messages"
                  autoFocus="first"
                  onClose={close}
                  onAction={(key) => {
                    onPick(String(key));
                    close();
                  }}
                >
                  {messages.map(({ key, words }) => (
                    <MenuItem key={key} id={key} className="list-item">
                      {words}
                    </MenuItem>
                  ))}
                </Menu>
              </>
            )}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
});
