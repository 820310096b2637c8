import { useEffect, useState } from "preact/hooks";
import type { Outcome } from "../physics/outcome.ts";
import { said } from "../saying/texts.ts";
import { type CheckStore, openCheckStore } from "../storage/checkStore.ts";
import type { ReplyBarProps } from "./exchange/reply/ReplyBar.tsx";
import { hasReplies } from "./exchange/reply/repliesHere.ts";
import { useLaunchedFiles } from "./exchange/useLaunchedFiles.ts";
import type { ChecksBesideProps } from "./home/ChecksBeside.tsx";
import { OfflineNotice } from "./offline/laterOfflineNotice.ts";
import { Boundary } from "./parts/Boundary.tsx";
import { later } from "./parts/later.tsx";
import { useWide } from "./parts/useWide.ts";
import { usePreferences } from "./preferences.ts";
import { placeAt } from "./screens.tsx";
import { useStore } from "./useStore.ts";

const openStore = () => openCheckStore(said);

const ReplyBar = later<ReplyBarProps>(
  async () => (await import("./exchange/reply/ReplyBar.tsx")).ReplyBar,
  { quiet: true },
);

const ChecksBeside = later<ChecksBesideProps>(
  async () => (await import("./home/ChecksBeside.tsx")).ChecksBeside,
  { waiting: () => <aside /> },
);

/** From here on the list of checks has room beside the one that is open, px. */
const roomForList = 1100;

function useHash(): string {
  const [hash, setHash] = useState(() => location.hash);
  useEffect(() => {
    const follow = () => setHash(location.hash);
    window.addEventListener("hashchange", follow);
    follow();
    return () => window.removeEventListener("hashchange", follow);
  }, []);
  return hash;
}

export function App({ open = openStore }: { open?: () => Promise<Outcome<CheckStore>> }) {
  const { route, check, beside, show } = placeAt(useHash());
  const preferences = usePreferences();
  const opened = useStore(open);
  const launched = useLaunchedFiles();
  const list = useWide(roomForList) && opened ? beside : null;
  return (
    <div class={list === null ? undefined : "two-panes"}>
      {list !== null && opened && (
        <ChecksBeside opened={opened} preferences={preferences} open={list} />
      )}
      <div>
        <Boundary place={JSON.stringify(route)}>
          {route.screen !== "checks" && (
            <OfflineNotice filling={check !== null && !check.atAnswer} updateOnly />
          )}
          {check && opened && hasReplies() && (
            <ReplyBar key={check.id} store={opened.store} id={check.id} atAnswer={check.atAnswer} />
          )}
          {show({ opened, preferences, launched })}
        </Boundary>
      </div>
    </div>
  );
}
