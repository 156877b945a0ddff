import type { ComponentType } from "preact";

import { later } from "../../parts/later.tsx";
import type { AboutProps } from "./MediaAbout.tsx";

/** MediaAbout of the second script, for the screens of the first. */
export const About = later("MediaAbout") as unknown as ComponentType<AboutProps>;
