import { later } from "../parts/later.tsx";
import { screen } from "../screen.tsx";

export const labelsScreen = screen({
  read: ({ parts }) =>
    parts.length === 1 && parts[0] === "labels" ? { screen: "labels" as const } : null,
  part: later(async () => (await import("./LabelsPlace.tsx")).LabelsPlace),
  props: (_, { preferences }) => ({ unit: preferences.length }),
});
