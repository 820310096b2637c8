import type { ComponentType, JSX } from "preact";
import { readAddressPart } from "../records/text/soundText.ts";
import type { Later } from "./parts/later.tsx";
import { OneMoment } from "./parts/OneMoment.tsx";
import type { Preferences } from "./preferences.ts";
import type { OpenedStore } from "./useStore.ts";

/** What stands after # in the page's address: as it is, and in parts, null where one can't be read. */
export interface Address {
  readonly hash: string;
  readonly parts: readonly (string | null)[];
}

export function addressOf(hash: string): Address {
  const path = hash.replace(/^#?\/?/, "");
  return { hash, parts: path.split("/").filter(Boolean).map(readAddressPart) };
}

/** What a screen can be given. */
export interface Surroundings {
  readonly opened: OpenedStore | null;
  readonly preferences: Preferences;
  /** Files that the device opened the app with. */
  readonly launched: readonly File[];
}

export interface WithStore extends Surroundings {
  readonly opened: OpenedStore;
}

interface Route {
  readonly screen: string;
}

/** A screen at an address. */
export interface Place {
  readonly route: Route;
  show(around: Surroundings): JSX.Element;
  /** Fetches its code ahead of being shown. */
  preload(): Promise<void>;
  /** The check that is open on it, while it is filled in or at its answer. */
  readonly check: { readonly id: string; readonly atAnswer: boolean } | null;
  /** The check of this phone that it is about: the list of checks may stand beside it. */
  readonly beside: string | null;
}

/** A screen: the place that it shows at an address, or null where the address is another's. */
export type ScreenAt = (address: Address) => Place | null;

interface Plan<R extends Route, Props extends object, Around> {
  /** The route that an address stands for here; null where it is another screen's. */
  readonly read: (address: Address) => R | null;
  readonly part: Later<Props> | ComponentType<Props>;
  readonly props: (route: R, around: Around) => Props;
  /** What is another instance of the screen: the id of what it shows. */
  readonly key?: (route: R) => string;
  readonly check?: (route: R) => Place["check"];
  readonly beside?: (route: R) => string;
}

async function preload(part: object): Promise<void> {
  if ("preload" in part && typeof part.preload === "function") await part.preload();
}

/** A screen that needs no storage. */
export function screen<R extends Route, Props extends object>(
  plan: Plan<R, Props, Surroundings>,
): ScreenAt {
  const Part = plan.part as ComponentType<Props>;
  return (address) => {
    const route = plan.read(address);
    return (
      route && {
        route,
        show: (around) => <Part key={plan.key?.(route)} {...plan.props(route, around)} />,
        preload: () => preload(plan.part),
        check: plan.check?.(route) ?? null,
        beside: plan.beside?.(route) ?? null,
      }
    );
  };
}

/** A screen that needs the checks of this phone; it waits until their storage is open. */
export function screenWithStore<R extends Route, Props extends object>({
  waiting: Waiting,
  ...plan
}: Plan<R, Props, WithStore> & {
  readonly waiting?: (route: R) => JSX.Element;
}): ScreenAt {
  const Part = plan.part as ComponentType<Props>;
  const Opened = ({ route, around }: { route: R; around: Surroundings }) => {
    const { opened } = around;
    if (opened) return <Part {...plan.props(route, { ...around, opened })} />;
    return Waiting ? Waiting(route) : <OneMoment />;
  };
  return screen<R, { route: R; around: Surroundings }>({
    ...plan,
    part: Object.assign(Opened, { preload: () => preload(plan.part) }),
    props: (route, around) => ({ route, around }),
  });
}
