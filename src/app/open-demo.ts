/** Opens the demo book; on first start lays it down. What a killed start left is finished by the next one. */
import { BookNotFound, beginBook, openBook } from "../store/index.js";
import type { BookStore } from "../store/index.js";
import { readDemo } from "./demo-file.js";
import { say } from "../words/index.js";
import { benchOn } from "./open-workbench.js";
import type { OpenBench } from "./open-workbench.js";

interface DemoOptions {
  readonly clock: () => Date;
  readonly programRoot: string;
}

const openOrBegin = async (folder: string, { clock, programRoot }: DemoOptions): Promise<BookStore> => {
  try {
    return await openBook(folder, { clock });
  } catch (error) {
    if (!(error instanceof BookNotFound)) throw error;
    const { content } = await readDemo(programRoot);
    return beginBook(folder, content.info, { clock, label: say("demo.begin") });
  }
};

/**
 * Opens the demo's folder, beginning the book when there is none and laying down the demo year when it has no content yet.
 * The photographs are brought afterwards.
 * @throws the store's tagged errors
 */
export const openDemo = async (folder: string, options: DemoOptions): Promise<OpenBench> => {
  const store = await openOrBegin(folder, options);
  try {
    const [info, plants, tables] = [await store.info(), await store.list("plant"), await store.tables()];
    if (info.illustrative && plants.length === 0 && tables.length === 0) {
      const { content } = await readDemo(options.programRoot);
      await store.putContent(content, { label: say("demo.lay-down"), undoable: false });
    }
    return benchOn(store, options.clock);
  } catch (error) {
    await store.close();
    throw error;
  }
};
