import type { ReactNode } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';

/** A dialog over the page; Escape or a click beside it closes it. */
export function Dialog(props: {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  readonly foot?: ReactNode;
  readonly wide?: boolean;
}) {
  return (
    <ModalOverlay className="veil" isOpen isDismissable onOpenChange={(open) => (open ? undefined : props.onClose())}>
      <Modal className="dialog-place">
        <AriaDialog className="dialog" data-wide={props.wide === true ? '' : undefined}>
          <Heading slot="title" level={2}>
            {props.title}
          </Heading>
          <div className="dialog-body">{props.children}</div>
          {props.foot === undefined ? null : <div className="dialog-foot">{props.foot}</div>}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
