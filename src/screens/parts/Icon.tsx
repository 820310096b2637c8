const paths = {
  back: "M15 5l-7 7 7 7",
  forward: "M9 5l7 7-7 7",
  plus: "M12 5v14M5 12h14",
  minus: "M5 12h14",
  cross: "M6 6l12 12M18 6L6 18",
  steps: "M9 6h11M9 12h11M9 18h11M4 6h.01M4 12h.01M4 18h.01",
  file: "M7 3h7l4 4v14H7zM14 3v4h4",
  copy: "M9 9h11v11H9zM5 15H4V4h11v1",
  pencil: "M4 20l1-4L16 5l3 3L8 19zM14 7l3 3",
  bin: "M5 7h14M10 7V4h4v3M7 7l1 13h8l1-13M11 11v5M13 11v5",
  undo: "M9 8L5 12l4 4M5 12h9a5 5 0 010 10h-2",
  tick: "M5 12l5 5 9-10",
  info: "M12 11v6M12 7.5h.01M12 3a9 9 0 100 18 9 9 0 000-18",
  more: "M12 5h.01M12 12h.01M12 19h.01",
  erase: "M9 5h12v14H9l-6-7zM12 9.5l5 5M17 9.5l-5 5",
  keyboard: "M3 6h18v12H3zM7 10h.01M12 10h.01M17 10h.01M8 14.5h8",
  camera: "M3 8h4l2-3h6l2 3h4v11H3zM12 10a3.5 3.5 0 100 7 3.5 3.5 0 000-7",
  ruler: "M3 8h18v8H3zM7 8v3M11 8v4M15 8v3M19 8v4",
  link: "M10 14a4 4 0 006 0l3-3a4 4 0 00-6-6l-1 1M14 10a4 4 0 00-6 0l-3 3a4 4 0 006 6l1-1",
  stop: "M5 4h14M8 4c-2 3 2 3 0 6s2 3 0 6l1 2h6l1-2c-2-3 2-3 0-6s2-3 0-6M5 21h14",
  drawer: "M4 5h16v14H4zM4 12h16M10 8.5h4M10 15.5h4",
  gear: "M12 9a3 3 0 100 6 3 3 0 000-6M12 3v3M12 18v3M3 12h3M18 12h3M5.6 5.6l2.2 2.2M16.2 16.2l2.2 2.2M5.6 18.4l2.2-2.2M16.2 7.8l2.2-2.2",
} as const;

export type IconName = keyof typeof paths;

/** Decorative: the control it stands in carries the words. */
export function Icon({ name, size = 22 }: { name: IconName; size?: number }) {
  return (
    <svg
      class="icon"
      width={size}
      height={size}
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      stroke-width={name === "more" || name === "steps" ? 2.6 : 2.2}
      stroke-linecap="round"
      stroke-linejoin="round"
      aria-hidden="true"
    >
      <path d={paths[name]} />
    </svg>
  );
}
