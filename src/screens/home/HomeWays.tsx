import { deskHref } from "../desk/deskRoutes.ts";
import { openHref } from "../exchange/shareRoutes.ts";
import { howComputedHref, howComputedName } from "../howComputed/howComputedRoute.ts";
import { packHref } from "../pack/packRoutes.ts";
import { Icon, type IconName } from "../parts/Icon.tsx";
import { quickCheckHref } from "../quickCheck/quickCheckRoutes.ts";
import { savedName, savedHref } from "../saved/savedRoute.ts";
import { settingsHref, settingsName } from "../settings/settingsRoute.ts";

interface Way {
  readonly icon: IconName;
  readonly words: string;
  readonly href: string;
}

const ways: readonly Way[] = [
  { icon: "ruler", words: "Do I need a taller stop?", href: quickCheckHref },
  { icon: "link", words: "Open a link or a code", href: openHref },
  { icon: "steps", words: "Desk: review many checks", href: deskHref },
  { icon: "stop", words: "Reference pack", href: packHref },
  { icon: "drawer", words: savedName, href: savedHref },
  { icon: "gear", words: settingsName, href: settingsHref },
  { icon: "info", words: howComputedName, href: howComputedHref },
];

/** Everything else that can be gone to, by icon and name. */
export function HomeWays({
  onOpenFile,
  onExamples,
  ready,
}: {
  onOpenFile: () => void;
  onExamples: () => void;
  ready: boolean;
}) {
  return (
    <nav class="home-ways" aria-label="More">
      <button type="button" class="home-way" onClick={onOpenFile} disabled={!ready}>
        <Icon name="file" />
        Open a file
      </button>
      {ways.map(({ icon, words, href }) => (
        <a key={href} class="home-way" href={href}>
          <Icon name={icon} />
          {words}
        </a>
      ))}
      <button type="button" class="home-way" onClick={onExamples} disabled={!ready}>
        <Icon name="copy" />
        Open demo checks
      </button>
    </nav>
  );
}
