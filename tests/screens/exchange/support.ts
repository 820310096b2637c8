import { vi } from "vitest";
import { newId } from "../../../src/records/check/storedCheck.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import type { OpenedStore } from "../../../src/screens/useStore.ts";
import { type CheckStore, openCheckStore } from "../../../src/storage/checkStore.ts";
import { tinyPhoto } from "../../support/pictures.ts";

/** A store of its own for one test. */
export async function freshStore(): Promise<CheckStore> {
  const opened = await openCheckStore(inModelUnits, `send ${newId()}`);
  if (!opened.ok) throw new Error(opened.fault.code);
  return opened.value;
}

export function openedWith(store: CheckStore): OpenedStore {
  return { store, fault: null, tryAgain: () => undefined };
}

/** Puts a property on `navigator` and gives back what takes it off again. */
export function withNavigator(properties: { readonly [name: string]: unknown }): () => void {
  const before = new Map<string, PropertyDescriptor | undefined>();
  for (const [name, value] of Object.entries(properties)) {
    before.set(name, Object.getOwnPropertyDescriptor(navigator, name));
    Object.defineProperty(navigator, name, { configurable: true, value });
  }
  return () => {
    for (const [name, descriptor] of before) {
      if (descriptor) Object.defineProperty(navigator, name, descriptor);
      else Reflect.deleteProperty(navigator, name);
    }
  };
}

/** A share sheet that takes whatever types it is told to, and remembers what it was handed. */
export function shareSheet(types: readonly string[], answer: () => Promise<void>) {
  const handed: ShareData[] = [];
  return {
    handed,
    canShare: ({ files = [] }: ShareData) => files.every(({ type }) => types.includes(type)),
    share: vi.fn((data: ShareData) => {
      handed.push(data);
      return answer();
    }),
  };
}

export const onePixelPhoto = tinyPhoto;

/** Words that do not compress, as long a text of them as is asked for. */
export function wordsOf(characters: number): string {
  let state = 7;
  let text = "";
  while (text.length < characters) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    text += `${state.toString(36)} `;
  }
  return text.slice(0, characters);
}
