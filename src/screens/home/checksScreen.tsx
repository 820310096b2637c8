import { OfflineNotice } from "../offline/laterOfflineNotice.ts";
import { screen } from "../screen.tsx";
import { Checks } from "./Checks.tsx";

/** The list of checks, at no address at all. */
export const checksScreen = screen({
  read: ({ parts }) => (parts.length === 0 ? { screen: "checks" } : null),
  part: Checks,
  props: (_, { opened, preferences }) => ({
    opened,
    preferences,
    notice: <OfflineNotice filling={false} />,
  }),
});
