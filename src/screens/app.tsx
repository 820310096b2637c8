import type { Outcome } from "../physics/outcome.ts";
import { type CheckStore, openCheckStore } from "../storage/checkStore.ts";
import { checksHref } from "./addresses.ts";
import type { DeskPlaceProps } from "./desk/DeskPlace.tsx";
import type { ReplyBarProps } from "./exchange/reply/ReplyBar.tsx";
import type { ReplyPlaceProps } from "./exchange/reply/ReplyPlace.tsx";
import { hasReplies } from "./exchange/reply/repliesHere.ts";
import type { SharePlaceProps } from "./exchange/SharePlace.tsx";
import { useLaunchedFiles } from "./exchange/useLaunchedFiles.ts";
import { Checks } from "./home/Checks.tsx";
import type { PackPlaceProps } from "./pack/PackPlace.tsx";
import { Boundary } from "./parts/Boundary.tsx";
import { ButtonLink } from "./parts/Button.tsx";
import { later } from "./parts/later.tsx";
import { Screen, useHeadingFocus } from "./parts/Screen.tsx";
import { usePreferences } from "./preferences.ts";
import { QuickCheckWaiting } from "./quickCheck/QuickCheckIntro.tsx";
import type { QuickCheckPlaceProps } from "./quickCheck/QuickCheckPlace.tsx";
import type { RankingPlaceProps } from "./ranking/RankingPlace.tsx";
import { useRoute } from "./router.ts";
import type { SavedPlaceProps } from "./saved/SavedPlace.tsx";
import type { SettingsPlaceProps } from "./settings/SettingsPlace.tsx";
import { useStore } from "./useStore.ts";

const openStore = () => openCheckStore();

export const CheckPlace = later(
  async () => (await import("./openCheck/CheckPlace.tsx")).CheckPlace,
);

const SharePlace = later<SharePlaceProps>(
  async () => (await import("./exchange/SharePlace.tsx")).default,
);

export const DeskPlace = later<DeskPlaceProps>(
  async () => (await import("./desk/DeskPlace.tsx")).DeskPlace,
);

const PackPlace = later<PackPlaceProps>(async () => (await import("./pack/PackPlace.tsx")).default);

const RankingPlace = later<RankingPlaceProps>(
  async () => (await import("./ranking/RankingPlace.tsx")).default,
);

const SavedPlace = later<SavedPlaceProps>(
  async () => (await import("./saved/SavedPlace.tsx")).SavedPlace,
);

export const QuickCheckPlace = later<QuickCheckPlaceProps>(
  async () => (await import("./quickCheck/QuickCheckPlace.tsx")).default,
  { waiting: QuickCheckWaiting },
);

const SettingsPlace = later<SettingsPlaceProps>(
  async () => (await import("./settings/SettingsPlace.tsx")).SettingsPlace,
);

const ReplyPlace = later<ReplyPlaceProps>(
  async () => (await import("./exchange/reply/ReplyPlace.tsx")).ReplyPlace,
);

const ReplyBar = later<ReplyBarProps>(
  async () => (await import("./exchange/reply/ReplyBar.tsx")).ReplyBar,
  {
    quiet: true,
  },
);

const OfflineNotice = later(
  async () => (await import("./offline/OfflineNotice.tsx")).OfflineNotice,
  { quiet: true },
);

function Nowhere() {
  const heading = useHeadingFocus("nowhere");
  return (
    <Screen
      top={<span class="screen-name brand">Stopfit</span>}
      actions={
        <ButtonLink look="main" href={checksHref}>
          To the list of checks
        </ButtonLink>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        There is nothing at this address
      </h1>
      <p>The link may be cut short. Your checks are in the list.</p>
    </Screen>
  );
}

export function App({ open = openStore }: { open?: () => Promise<Outcome<CheckStore>> }) {
  const route = useRoute();
  const preferences = usePreferences();
  const opened = useStore(open);
  const launched = useLaunchedFiles();
  const onList = route.screen === "checks";

  let screen = (
    <Checks opened={opened} preferences={preferences} notice={<OfflineNotice filling={false} />} />
  );
  if (route.screen === "unknown") screen = <Nowhere />;
  if (route.screen === "step" || route.screen === "answer") {
    screen = opened ? (
      <CheckPlace
        key={route.id}
        opened={opened}
        id={route.id}
        place={route.screen === "answer" ? "answer" : route.step}
        preferences={preferences}
      />
    ) : (
      <p class="later-waiting">One moment …</p>
    );
  }
  if (route.screen === "open" || route.screen === "scan" || route.screen === "received") {
    screen = opened ? (
      <SharePlace route={route} opened={opened} unit={preferences.length} launched={launched} />
    ) : (
      <p class="later-waiting">One moment …</p>
    );
  }
  if (route.screen === "saved" && opened) screen = <SavedPlace opened={opened} />;
  if (route.screen === "pack") screen = <PackPlace route={route} unit={preferences.length} />;
  if (route.screen === "quickCheck") {
    screen = opened ? (
      <QuickCheckPlace opened={opened} stage={route.stage} unit={preferences.length} />
    ) : (
      <QuickCheckWaiting stage={route.stage} />
    );
  }
  if (route.screen === "stops") {
    screen = opened ? (
      <RankingPlace key={route.id} opened={opened} id={route.id} unit={preferences.length} />
    ) : (
      <p class="later-waiting">One moment …</p>
    );
  }
  if (route.screen === "settings") screen = <SettingsPlace preferences={preferences} />;
  if (route.screen === "desk") screen = <DeskPlace route={route.desk} unit={preferences.length} />;
  if (route.screen === "reply" && opened) {
    screen = <ReplyPlace key={route.id} store={opened.store} id={route.id} />;
  }
  const checkId = route.screen === "step" || route.screen === "answer" ? route.id : null;
  return (
    <Boundary place={JSON.stringify(route)}>
      {!onList && <OfflineNotice filling={route.screen === "step"} updateOnly />}
      {checkId && opened && hasReplies() && (
        <ReplyBar
          key={checkId}
          store={opened.store}
          id={checkId}
          atAnswer={route.screen === "answer"}
        />
      )}
      {screen}
    </Boundary>
  );
}
