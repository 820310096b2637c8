import type { Linkage } from "../fitment.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import type { LinkageDefinition } from "../layouts/layoutDefinition.ts";

/** Every linkage of every layout; those that layouts share are one. */
export const linkages = Object.assign(
  {},
  ...Object.values(layoutRegistry).map((layout) => layout.linkages),
) as Readonly<Record<Linkage, LinkageDefinition>>;
