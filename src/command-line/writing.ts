/** Writes as fast as the reader takes it, so that thousands of files need no more memory than one. */
export function write(text: string): Promise<void> {
  return new Promise((done) => {
    process.stdout.write(text, () => done());
  });
}

/** A reader that has had enough, such as `head`, closes the pipe: that is no fault. */
export function closePipeQuietly(): void {
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    process.exit(error.code === "EPIPE" ? 0 : 1);
  });
}

/** Where a command says its answer, and what keeps it from one. */
export interface Terminal {
  write(text: string): Promise<void>;
  complain(text: string): void;
}

export const terminal: Terminal = {
  write,
  complain: (text) => {
    process.stderr.write(text);
  },
};
