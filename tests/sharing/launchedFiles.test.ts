import { afterEach, describe, expect, it, vi } from "vitest";
import { onLaunchedFiles } from "../../src/sharing/launchedFiles.ts";

describe("files that the device opens the app with", () => {
  afterEach(() => vi.unstubAllGlobals());

  it("are read from the launch queue, without those that cannot be", async () => {
    let launch: (params: unknown) => void = () => undefined;
    const setConsumer = (consumer: (params: unknown) => void) => {
      launch = consumer;
    };
    vi.stubGlobal("launchQueue", { setConsumer });
    const take = vi.fn<(files: readonly File[]) => void>();
    onLaunchedFiles(take);
    const file = new File(["{}"], "check.json");
    launch({ files: [] });
    launch({});
    launch({
      files: [
        { getFile: () => Promise.resolve(file) },
        { getFile: () => Promise.reject(new Error("gone")) },
      ],
    });
    await vi.waitFor(() => expect(take).toHaveBeenCalledTimes(1));
    expect(take).toHaveBeenCalledWith([file]);
  });

  it("are none where not one of them can be read", async () => {
    let launch: (params: unknown) => void = () => undefined;
    vi.stubGlobal("launchQueue", {
      setConsumer: (consumer: typeof launch) => {
        launch = consumer;
      },
    });
    const take = vi.fn();
    onLaunchedFiles(take);
    launch({ files: [{ getFile: () => Promise.reject(new Error("gone")) }] });
    launch({ files: [] });
    await new Promise((done) => setTimeout(done, 0));
    expect(take).not.toHaveBeenCalled();
  });

  it("are none where the browser has no launch queue", () => {
    const take = vi.fn();
    onLaunchedFiles(take);
    expect(take).not.toHaveBeenCalled();
  });
});
