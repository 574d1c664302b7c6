/**
 * Remembers what was read until the next write: this process is the only writer of an open book, so between two writes every
 * reading gives the same. Records handed out are shared and must not be changed by their readers.
 */
export interface Remembered {
  /** What `read` gives, read once until {@link forget}. A reading that fails is not remembered. */
  once<T>(key: string, read: () => Promise<T>): Promise<T>;
  forget(): void;
}

export const remembered = (): Remembered => {
  let kept = new Map<string, Promise<unknown>>();
  return {
    once: <T>(key: string, read: () => Promise<T>): Promise<T> => {
      const there = kept.get(key);
      // The key names what is read, so the type is that of its reader.
      if (there !== undefined) return there as Promise<T>;
      const memory = kept;
      const reading = read();
      memory.set(key, reading);
      reading.catch(() => memory.delete(key));
      return reading;
    },
    forget: () => {
      kept = new Map();
    },
  };
};
