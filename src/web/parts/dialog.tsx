import type { ReactNode } from "react";
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { say } from "../../words/index.js";

export interface DialogProps {
  readonly title: string;
  readonly open: boolean;
  readonly onClose: () => void;
  /** "sheet": a leaf over the page; "whole": the whole window, for photographs. */
  readonly shape?: "sheet" | "whole";
  readonly children: ReactNode;
  /** Buttons at the foot. */
  readonly foot?: ReactNode;
}

/** A leaf laid over the page. Escape and a press beside it close it; focus goes in and comes back. */
export const Dialog = ({ title, open, onClose, shape = "sheet", children, foot }: DialogProps) => (
  <ModalOverlay className={`dialog-ground dialog-${shape}`} isOpen={open} isDismissable onOpenChange={(now) => !now && onClose()}>
    <Modal className="dialog-modal">
      <AriaDialog className="dialog">
        <header className="dialog-head">
          <Heading slot="title" level={2}>
            {title}
          </Heading>
          <button type="button" className="quiet" onClick={onClose}>
            {say("web.close")}
          </button>
        </header>
        <div className="dialog-body">{children}</div>
        {foot === undefined ? null : <footer className="dialog-foot">{foot}</footer>}
      </AriaDialog>
    </Modal>
  </ModalOverlay>
);
