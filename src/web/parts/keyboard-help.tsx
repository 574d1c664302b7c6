import { say } from "../../words/index.js";
import { Dialog } from "./dialog.js";

const keys = [
  ["?", "web.keys.help"],
  ["Ctrl Z", "web.keys.undo"],
  ["Ctrl Shift Z", "web.keys.redo"],
  ["[  ]", "web.keys.days"],
  ["← ↑ → ↓", "web.keys.board"],
  ["Home  End", "web.keys.board-ends"],
  ["Enter", "web.keys.enter"],
  ["←  →", "web.keys.photos"],
  ["Esc", "web.keys.escape"],
] as const;

/** The keys that work everywhere and on the board. */
export const KeyboardHelp = ({ open, onClose }: { readonly open: boolean; readonly onClose: () => void }) => (
  <Dialog title={say("web.keys.title")} open={open} onClose={onClose}>
    <table className="plain">
      <tbody>
        {keys.map(([key, word]) => (
          <tr key={word}>
            <th scope="row">
              <kbd>{key}</kbd>
            </th>
            <td>{say(word)}</td>
          </tr>
        ))}
      </tbody>
    </table>
    <p className="side">{say("web.keys.note")}</p>
  </Dialog>
);
