import { later } from "../../parts/later.tsx";
import { screenWithStore } from "../../screen.tsx";

/** The desk's reply to a check on this phone. */
export const replyScreen = screenWithStore({
  read: ({ parts: [first, id, more] }) =>
    first === "reply" && id && more === undefined ? { screen: "reply", id } : null,
  part: later(async () => (await import("./ReplyPlace.tsx")).ReplyPlace),
  props: ({ id }, { opened, preferences }) => ({
    store: opened.store,
    id,
    unit: preferences.length,
  }),
  key: ({ id }) => id,
});
