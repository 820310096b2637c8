import { useReferencePack } from "../referencePack.ts";

/** Where a file or a link is to be sent, by the parts library; nothing where it does not say. */
export function MakerAddress() {
  const { maker } = useReferencePack();
  const address = maker?.address?.trim();
  if (!maker || !address) return null;
  return (
    <p class="small">
      To {maker.name.trim() || "the maker"}: <bdi>{address}</bdi>
    </p>
  );
}
