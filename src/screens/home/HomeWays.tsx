import * as messages from "../../words/compiled/screens/home.ts";
import { packHref } from "../addresses.ts";
import { deskHref } from "../desk/deskRoutes.ts";
import { openHref } from "../exchange/shareRoutes.ts";
import { howComputedHref, howComputedName } from "../howComputed/howComputedRoute.ts";
import { Icon, type IconName } from "../parts/Icon.tsx";
import { quickCheckHref } from "../quickCheck/quickCheckRoutes.ts";
import { savedHref, savedName } from "../saved/savedRoute.ts";
import { settingsHref, settingsName } from "../settings/settingsRoute.ts";

interface Way {
  readonly icon: IconName;
  readonly words: string;
  readonly href: string;
}

const quickWay: Way = { icon: "ruler", words: messages.doINeedTaller, href: quickCheckHref };

const oftenWays: readonly Way[] = [
  { icon: "steps", words: messages.reviewDesk, href: deskHref },
  { icon: "stop", words: messages.partsLibrary, href: packHref },
  { icon: "gear", words: settingsName, href: settingsHref },
];

const otherWays: readonly Way[] = [
  { icon: "link", words: messages.openLinkOrCode, href: openHref },
  { icon: "drawer", words: savedName, href: savedHref },
  { icon: "info", words: howComputedName, href: howComputedHref },
];

/** What is gone to most, over the list. */
export function OftenWays({ onOpenFile, ready }: { onOpenFile: () => void; ready: boolean }) {
  return (
    <nav class="home-ways home-ways-often" aria-label={messages.mainPlaces}>
      <button type="button" class="home-way" onClick={onOpenFile} disabled={!ready}>
        <Icon name="file" />
        {messages.openFile}
      </button>
      <Ways ways={oftenWays} />
    </nav>
  );
}

/** The rest, under the list. */
export function OtherWays({
  onExamples,
  ready,
  quick,
}: {
  onExamples: () => void;
  ready: boolean;
  /** With the quick check, where it is not offered above. */
  quick: boolean;
}) {
  return (
    <nav class="home-ways" aria-label={messages.otherPlaces}>
      <Ways ways={quick ? [quickWay, ...otherWays] : otherWays} />
      <button type="button" class="home-way" onClick={onExamples} disabled={!ready}>
        <Icon name="copy" />
        {messages.openDemoChecks}
      </button>
    </nav>
  );
}

function Ways({ ways }: { ways: readonly Way[] }) {
  return (
    <>
      {ways.map(({ icon, words, href }) => (
        <a key={href} class="home-way" href={href}>
          <Icon name={icon} />
          {words}
        </a>
      ))}
    </>
  );
}
