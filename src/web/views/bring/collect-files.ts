/**
 * The files of what was dropped or chosen, folders walked through, one by one: a card with ten thousand photographs is
 * never held in a list before the first one goes on its way.
 */

/** Files that systems leave in folders and nobody means to bring. */
const leftBySystems = /^(\..*|thumbs\.db|desktop\.ini)$/i;

/** Is this a file nobody means to bring (hidden, or left by the system)? */
export const isPassedOver = (name: string): boolean => leftBySystems.test(name);

const fileOf = async (entry: FileSystemFileEntry): Promise<File> => new Promise((resolve, reject) => entry.file(resolve, reject));

const nextEntries = async (reader: FileSystemDirectoryReader): Promise<readonly FileSystemEntry[]> =>
  new Promise((resolve, reject) => reader.readEntries(resolve, reject));

async function* filesUnder(entry: FileSystemEntry): AsyncGenerator<File> {
  if (entry.isFile) {
    // isFile tells which of the two sub-interfaces it is; the types of the page do not say so
    yield await fileOf(entry as FileSystemFileEntry);
    return;
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  // a reader hands out at most a hundred at a time, and an empty list at the end
  for (let batch = await nextEntries(reader); batch.length > 0; batch = await nextEntries(reader)) {
    for (const child of batch) yield* filesUnder(child);
  }
}

/**
 * The files of a drop. Call it inside the drop event: what was dropped may be read only then; the walk itself goes on
 * afterwards.
 */
export const filesOfDrop = (transfer: DataTransfer): AsyncGenerator<File> => {
  const entries: FileSystemEntry[] = [];
  const loose: File[] = [];
  for (const item of transfer.items) {
    if (item.kind !== "file") continue;
    const entry = item.webkitGetAsEntry();
    if (entry !== null) entries.push(entry);
    else {
      const file = item.getAsFile();
      if (file !== null) loose.push(file);
    }
  }
  return (async function* walk(): AsyncGenerator<File> {
    yield* loose;
    for (const entry of entries) yield* filesUnder(entry);
  })();
};

/** The files of a file or folder picker. */
export async function* filesOfPicker(list: FileList): AsyncGenerator<File> {
  yield* list;
}
