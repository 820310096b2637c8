import * as messages from "../words/compiled/screens.ts";
import { checksHref } from "./addresses.ts";
import { ButtonLink } from "./parts/Button.tsx";
import { Screen, useHeadingFocus } from "./parts/Screen.tsx";
import { addressOf, type Place } from "./screen.tsx";
import * as screens from "./screenList.ts";

function Nowhere() {
  const heading = useHeadingFocus("nowhere");
  return (
    <Screen
      top={<span class="screen-name brand">{messages.stopfit}</span>}
      actions={
        <ButtonLink look="main" href={checksHref}>
          {messages.allChecks}
        </ButtonLink>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.thereIsNothingAt}
      </h1>
      <p>{messages.linkMayBeCut}</p>
    </Screen>
  );
}

const nowhere: Place = {
  route: { screen: "unknown" },
  show: () => <Nowhere />,
  preload: async () => undefined,
  check: null,
  beside: null,
};

/** The one screen at an address, of which `hash` is what stands after #. */
export function placeAt(hash: string): Place {
  const address = addressOf(hash);
  for (const screenAt of Object.values(screens)) {
    const place = screenAt(address);
    if (place) return place;
  }
  return nowhere;
}
