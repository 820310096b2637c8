import type { ComponentChildren } from "preact";

export function Card({
  heading,
  level = 2,
  children,
}: {
  heading?: ComponentChildren;
  level?: 2 | 3;
  children: ComponentChildren;
}) {
  const Heading = level === 2 ? "h2" : "h3";
  return (
    <section class="card">
      {heading && <Heading>{heading}</Heading>}
      {children}
    </section>
  );
}
