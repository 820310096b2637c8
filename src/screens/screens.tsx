import { checksHref } from "./addresses.ts";
import { deskScreen } from "./desk/deskScreen.ts";
import { replyScreen } from "./exchange/reply/replyScreen.ts";
import { shareScreen } from "./exchange/shareScreen.ts";
import { checksScreen } from "./home/checksScreen.tsx";
import { howComputedScreen } from "./howComputed/howComputedScreen.ts";
import { labelsScreen } from "./labels/labelsScreen.ts";
import { openCheckScreen } from "./openCheck/openCheckScreen.ts";
import { packScreen } from "./pack/packScreen.ts";
import { ButtonLink } from "./parts/Button.tsx";
import { Screen, useHeadingFocus } from "./parts/Screen.tsx";
import { quickCheckScreen } from "./quickCheck/quickCheckScreen.tsx";
import { rankingScreen } from "./ranking/rankingScreen.ts";
import { savedScreen } from "./saved/savedScreen.ts";
import { addressOf, type Place, type ScreenAt } from "./screen.tsx";
import { settingsScreen } from "./settings/settingsScreen.ts";

function Nowhere() {
  const heading = useHeadingFocus("nowhere");
  return (
    <Screen
      top={<span class="screen-name brand">Stopfit</span>}
      actions={
        <ButtonLink look="main" href={checksHref}>
          All checks
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

/** Every screen of the app. The first that knows an address shows it. */
const screens: readonly ScreenAt[] = [
  shareScreen,
  checksScreen,
  rankingScreen,
  openCheckScreen,
  quickCheckScreen,
  packScreen,
  labelsScreen,
  savedScreen,
  settingsScreen,
  howComputedScreen,
  deskScreen,
  replyScreen,
];

const nowhere: Place = {
  route: { screen: "unknown" },
  show: () => <Nowhere />,
  preload: async () => undefined,
  check: null,
};

/** The screen at an address, of which `hash` is what stands after #. */
export function placeAt(hash: string): Place {
  const address = addressOf(hash);
  for (const screenAt of screens) {
    const place = screenAt(address);
    if (place) return place;
  }
  return nowhere;
}
