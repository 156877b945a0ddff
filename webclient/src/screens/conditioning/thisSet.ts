// The one interval set of this page.

import { phone } from "../watch/device.ts";
import { SetRunner } from "./setRunner.ts";

export const setRunner = new SetRunner(phone);
