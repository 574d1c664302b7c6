/** Runs asynchronous tasks one after another, in the order they were asked for. */
export interface OneAtATime {
  /** Runs `task` when all before it have ended, well or badly; its own error goes to its own caller. */
  run<T>(task: () => Promise<T>): Promise<T>;
  /** Ends when nothing is left to run. */
  idle(): Promise<void>;
}

export const oneAtATime = (): OneAtATime => {
  let last: Promise<unknown> = Promise.resolve();
  return {
    run: <T>(task: () => Promise<T>): Promise<T> => {
      const mine = last.then(task);
      // The queue goes on after a failure; the failure itself is reported through `mine`.
      last = mine.catch(() => undefined);
      return mine;
    },
    idle: async () => {
      for (let seen: unknown = null; seen !== last;) {
        seen = last;
        await last;
      }
    },
  };
};
