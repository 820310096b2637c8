import { existsSync } from "node:fs";
import { installDebian } from "./debianPackages.mjs";

export const firefoxProgram = "/usr/bin/firefox-esr";
export const webkitProgram = "/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser";

/** The engines beside Chromium, by the programs that their tests start. */
export const otherEngines = [
  { name: "Firefox", programs: [firefoxProgram], packages: ["firefox-esr"] },
  {
    name: "WebKit",
    programs: [webkitProgram, "/usr/bin/WebKitWebDriver", "/usr/bin/Xvfb"],
    packages: ["webkit2gtk-driver", "libwebkit2gtk-4.1-0", "xvfb"],
  },
];

export function missingPrograms({ programs }, exists = existsSync) {
  return programs.filter((program) => !exists(program));
}

const installMs = 180_000;

/** Installs what is missing where that may be; what is missing then, as sentences. */
export async function ensureOtherEngines() {
  const lacking = () => otherEngines.filter((engine) => missingPrograms(engine).length > 0);
  const packages = lacking().flatMap((engine) => engine.packages);
  if (packages.length > 0) await installDebian(packages, installMs);
  return lacking().map(
    ({ name, packages: wanted }) =>
      `${name} is not here: its tests are skipped and counted. Debian and Ubuntu: sudo apt-get install ${wanted.join(" ")}`,
  );
}
