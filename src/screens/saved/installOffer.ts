/** The browser's own offer to install the app, held until the person asks for it. */
export interface InstallOffer extends Event {
  prompt(): Promise<{ readonly outcome: "accepted" | "dismissed" }>;
}

let offer: InstallOffer | null = null;

/** From the first moment on, for the browser makes its offer only once. */
export function holdInstallOffer(): void {
  addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault();
    offer = event as InstallOffer;
  });
}

export function installOffer(): InstallOffer | null {
  return offer;
}

/** Each offer can be taken up once. */
export function takeInstallOffer(): InstallOffer | null {
  const taken = offer;
  offer = null;
  return taken;
}
